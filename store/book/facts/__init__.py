"""What changes slowly, as frozen values, by what it is about. No row leaks out."""
