"""A path spread over weeks: which drill in which session until the lift is held."""
