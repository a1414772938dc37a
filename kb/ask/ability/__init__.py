"""What a lifter can do: the states there may be, how likely each is, which check tells most, and what comes next."""
