"""What an animal needs and gets, a mix of feeds that fits, and a change in safe steps."""
