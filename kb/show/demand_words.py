"""What a position asks of a body, in a sentence or two."""

from kb.body.demand import demand
from kb.body.proportions import USUAL
from kb.show.coach_words import listed
from kb.terms import Position

__all__ = ["asked"]

DEEP = 10.0
"""Dorsiflexion below which an ankle asks for nothing worth a word, degrees."""


def asked(position: Position) -> str:
    """What the position asks of usual proportions, where it asks for much; nothing otherwise.

    The least ankle is that of a body whose hips, shoulders and trunk give all they may.
    """
    found = demand(USUAL, position)
    parts = []
    ankle = found.angles.get("ankle", 0.0)
    if position.contact == "feet-flat" and ankle > DEEP and found.least_ankle is not None:
        least = round(found.least_ankle)
        less = f" (with more lean, {least} at the least)" if least < round(ankle) else ""
        parts.append(f"ankles that bend {ankle:.0f} degrees under load{less}")
    if found.upper_back >= 1:
        parts.append(f"{found.upper_back:.0f} degrees from the upper back, past the shoulders' 180")
    if position.contact == "split":
        parts.append(f"a back hip that opens {-found.angles['back_hip']:.0f} degrees")
    return listed(parts)
