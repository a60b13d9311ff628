"""What an animal needs in a day, by what she is and does."""
