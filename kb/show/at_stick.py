"""What is said of a chain that ends with a stick: the lift there shows the order of things, and no more."""

from kb.ask.matter import Matter
from kb.ask.route import Route
from kb.terms import Load, Stage

__all__ = ["at_stick_said"]

SAID = (
    "The lift with a stick only shows the order of things: two rounds of it. The minutes that this leaves go to"
    " more rounds of drill {n}, while they are to standard."
)
"""Common practice, no source."""


def at_stick_said(matter: Matter, route: Route) -> str:
    """Where the minutes of the lift go at stick load; nothing with a weight, or where nothing else is worked on."""
    worked = [n for n, entry in enumerate(route.entries, 1) if entry.work and entry.drill.stage < Stage.WHOLE]
    if matter.load > Load.STICK or not worked or route.entries[-1].drill.stage is not Stage.WHOLE:
        return ""
    return SAID.format(n=worked[0])
