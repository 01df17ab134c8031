"""One revision a file, in order."""
