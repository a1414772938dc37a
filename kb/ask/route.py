"""A route: an ordered list of drills, each as it is to be done."""

from typing import NamedTuple

from kb.ask.choices import Choices
from kb.ask.matter import Matter
from kb.ask.search import Found
from kb.dials import Change, Dials, changes, spans
from kb.evidence import addresses
from kb.kit import Gear, gear_at
from kb.terms import Drill, Load

__all__ = ["Entry", "Route", "route_of"]


class Entry(NamedTuple):
    """One drill of a route, at one load, as it is to be done.

    `gone` is what it shows besides its standard once the fault is gone: of the fault asked about where it tests that,
    else of the one worked on where it tests that.
    """

    drill: Drill
    load: Load
    dials: Dials
    work: bool
    seconds: int
    addresses: tuple[str, ...]
    tests: bool
    gear: tuple[Gear, ...]
    step: int | None
    changes: tuple[Change, ...]
    gone: str = ""


class Route(NamedTuple):
    """An ordered list of entries; `sittings` are half-open ranges of them, sharing one entry each.

    `gap` is (cost - bound) / cost: 0 when no lawful list can be cheaper.
    """

    entries: tuple[Entry, ...]
    cost: int
    gap: float
    sittings: tuple[tuple[int, int], ...]
    proved: bool = True

    @property
    def optimal(self) -> bool:
        """Whether it is proved that no lawful list is cheaper."""
        return self.proved and self.gap == 0

    @property
    def seconds(self) -> int:
        """All its entries' time, s; what a later sitting repeats as a check is not in it."""
        return sum(entry.seconds for entry in self.entries)


def route_of(matter: Matter, choices: Choices, found: Found, *, proved: bool = True) -> Route:
    """A list of nodes as entries; without sittings yet (one, of everything)."""
    lift, question, field = matter.shelf.lift, matter.question, choices.field
    entries: list[Entry] = []
    for at, n in enumerate(found.nodes):
        drill, load = choices.nodes[n]
        here = matter.dials(drill, load)
        before = entries[-1].dials if entries else None
        entries.append(
            Entry(
                drill=drill,
                load=load,
                dials=here,
                work=field.addresses[n] or drill.id == lift.drill,
                seconds=field.seconds[n],
                addresses=tuple(
                    cause.id for cause in matter.worked.causes if addresses(drill, matter.worked, cause, load)
                ),
                tests=matter.tests(drill, load),
                gear=gear_at(matter.fits[drill.id], load, question.have, matter.shelf.items),
                step=field.sizes[field.profile[found.nodes[at - 1]]][field.profile[n]] if before else None,
                changes=changes(before, here, lift.points, spans(lift)) if before else (),
                gone=matter.gone(drill, load),
            )
        )
    gap = 0.0 if found.optimal else (found.cost - found.bound) / found.cost
    return Route(tuple(entries), found.cost, gap, ((0, len(entries)),), proved)
