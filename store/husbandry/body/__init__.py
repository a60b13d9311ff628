"""What an animal weighs, how fat she is, and how she grows."""
