"""What feeds are made of, what they weigh by volume, how they are mixed and soaked."""
