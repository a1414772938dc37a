"""The cause that leads where a fault shows only from some weight on: none that a stick shows as well."""

import re

from kb.terms import Fault, Load

__all__ = ["under_weight"]

_STICK_SHOWS = re.compile(
    r"\b(?:even|(?:shows|happens|is there)(?: at any speed,| even)?) with a stick|\bwith a stick (?:too|as well)"
    r"|\bstick as well",
    re.IGNORECASE,
)


def under_weight(fault: Fault) -> str | None:
    """The commonest cause that needs a weight to show, where the commonest of all is said to show with a stick.

    None where it isn't, or no cause needs one.
    """
    if not _STICK_SHOWS.search(fault.causes[0].text):
        return None
    heavy = (each for each in fault.causes if each.shows_at.load >= Load.LIGHT and each.kind != "earlier")
    return next((each.id for each in heavy), None)
