"""A session: what to do from the first minute to the last, fitted to the clock."""
