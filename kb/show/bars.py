"""A route or a path as bars over a lift's timeline: what the reach chart shows, whatever it is drawn with."""

from collections.abc import Collection, Sequence
from typing import NamedTuple

from kb import dose
from kb.ask.path import Path
from kb.ask.route import Route
from kb.dials import Dials
from kb.evidence import phase_masks
from kb.show.coach_words import human, largest_change, listed
from kb.terms import Drill, DrillId, Fault, Lift, Stage

__all__ = ["Bar", "bands_of", "path_bars", "route_bars"]


class Bar(NamedTuple):
    """One drill of a chart. `dials` is None for preparation, which has no place on the timeline.

    `said` is the one thing put in words beside it. `work` is False for a check.
    """

    name: str
    seconds: int
    dials: Dials | None
    said: str
    work: bool = True
    gateway: bool = False

    @property
    def minutes(self) -> int:
        """Its time for people, rounded up."""
        return dose.minutes(self.seconds)


def _opens(drill: Drill) -> str:
    return f"opens {listed([human(joint) for joint in drill.opens])}"


def route_bars(route: Route, lift: Lift) -> tuple[Bar, ...]:
    """The bars of a chain's route."""
    return tuple(
        Bar(
            entry.drill.name,
            entry.seconds,
            None if entry.drill.stage is Stage.PREPARE else entry.dials,
            _opens(entry.drill)
            if entry.drill.stage is Stage.PREPARE
            else largest_change(entry.changes, lift, entry.drill),
            entry.work,
        )
        for entry in route.entries
    )


def path_bars(path: Path, gateways: Collection[DrillId]) -> tuple[Bar, ...]:
    """The bars of a path, its gateways marked."""
    return tuple(
        Bar(
            entry.drill.name,
            entry.seconds,
            None if entry.drill.stage is Stage.PREPARE else entry.dials,
            _opens(entry.drill)
            if entry.drill.stage is Stage.PREPARE
            else largest_change(entry.changes, path.shelf.lift, entry.drill),
            gateway=entry.drill.id in gateways,
        )
        for entry in path.entries
    )


def bands_of(fault: Fault, lift: Lift) -> Sequence[tuple[int, int]]:
    """The stretches of a lift's timeline in which a fault shows, as first and last place."""
    return [((mask & -mask).bit_length() - 1, mask.bit_length() - 1) for mask in phase_masks(fault, lift)]
