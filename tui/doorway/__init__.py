"""Where there is no book yet: the demo, a new farm, a farm folder, a book from somewhere else."""
