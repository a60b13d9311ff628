"""Several steps on one screen: all buckets, or a whole pen."""
