"""What is said of a lifter who is cleared: texts alone, since every command that asks for it shows them."""

__all__ = ["CLEARED_SAYS", "IF_CLEARED", "TICKED"]

CLEARED_SAYS = "free of pain and well today, and cleared to lift by a doctor or a physiotherapist"
"""What whoever asks says of a lifter with `cleared`."""

IF_CLEARED = f"Is the lifter {CLEARED_SAYS}? Then say so with --cleared, and the rest is answered."
"""What stands below a caution that this would let the rest be answered after."""

TICKED = f"The lifter is {CLEARED_SAYS}."
"""What is ticked on a page to say so."""
