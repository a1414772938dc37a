"""The rules a library is held to: one rule a file."""
