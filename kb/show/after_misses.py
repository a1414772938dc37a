"""What goes on the bar after misses: less, in singles, and not up to what was missed."""

from collections.abc import Sequence

__all__ = ["OF_MISSED", "after_misses"]

OF_MISSED = 0.9
"""The share of the least weight missed at which one begins anew. Common practice, no source."""

STEPS = 2
"""Steps up at most on the day, a good single before each. Common practice, no source."""


def after_misses(missed: Sequence[str], now: str, step: str) -> str:
    """What is done today after the misses, and what the weeks after count from; weights as they are said.

    >>> after_misses(["72 kg"], "64 kg", "2.5 kg")[:22]
    'After 72 kg was missed'
    """
    least, several = missed[0], len(missed) > 1
    was = f"{' and '.join(missed) if len(missed) < 3 else ', '.join(missed)} {'were' if several else 'was'} missed"
    return (
        f"After {was}: not that again today, whatever the plan says. {now}, nine tenths of the least, three singles."
        f" All three to standard and quick: {step} more, {STEPS} steps at most, a good single before each, and stop"
        f" below {least}. The first miss ends the lift: its parts at ease, or home. Short of sleep or in haste: stay"
        f" at {now}; ill, dizzy or hurt: no lifting. For two weeks shares are of {least}, not of the best; if all went"
        " well, the best counts again. Always missed the same way, in front or behind: that is a"
        " fault to look up, with `find`."
    )
