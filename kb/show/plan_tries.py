"""The tries of the day in words: what each weighs, when to take it, and when to repeat the one before."""

from kb.ask.plan.fill import Slot

__all__ = ["tries_said"]

WARM_UP_TO = 0.93
"""The share of the first try of the last single before it. Common practice, no source."""


def tries_said(slot: Slot) -> list[str]:
    """One line a try, of the day's lift; none where no weight was wished for."""
    first, *others = slot.tries or (0.0,)
    if not first:
        return []
    said = [
        f"First try, {first:g} {slot.unit}: lifted in training. Take it once a single of about"
        f" {int(WARM_UP_TO * first)} {slot.unit} was clean. Missed: the next try is this weight again."
    ]
    if len(others) > 1:
        said.append(
            f"Second try, {others[0]:g} {slot.unit}: after a clean first. Missed: the last try is this weight again."
        )
    if others:
        before, name = ("second", "Third") if len(others) > 1 else ("first", "Second")
        said.append(
            f"{name} try, {others[-1]:g} {slot.unit}: only after a clean {before}. No fourth, whatever happens."
        )
    return said
