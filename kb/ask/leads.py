"""What begins a mind that leads an answer: a text alone, as every answer asks and few are told of a lifter."""

__all__ = ["LEADS"]

LEADS = "Is it "
"""Whether it is a fault at all, or only the room, the floor or the order."""
