"""Files that people hand in, read and checked."""
