"""What a plan is made of: each drill of a path at each weight it is to be done at, and how often until it is held."""

from collections.abc import Iterable
from typing import NamedTuple

from kb import dose
from kb.ask.path import Path, PathEntry
from kb.dials import Dials
from kb.kit import fit
from kb.terms import Catch, Drill, ItemId, Load, Speed, Stage

__all__ = ["EXPOSURES", "ONCE_HELD", "WORK_UP_S", "Form", "forms_of", "kind_of"]

EXPOSURES: dict[str, tuple[int, str]] = {
    "prepare": (2, "a stretch is learnt at once: shown, looked at once more, and then it belongs to the warm-up"),
    "held": (2, "a position is shown, and found again on another day"),
    "slow": (3, "a slow movement is shown, worked on, and checked on another day"),
    "fast": (3, "at full speed there is no time to mend anything: shown, worked on, checked on another day"),
    "whole": (4, "full speed into a full catch puts most together: worked on twice after it was shown"),
    "again": (2, "what will come back heavier is met on two days first: nothing is loaded that wasn't held unloaded"),
    "heavier": (2, "the movement is known, the weight is new: once to feel it, once to know it stays"),
}
"""On how many days a drill is expected to be met until it is held, by what it is, and why so many.

Common practice, no source: what is published says how far apart, not how often.
"""

ONCE_HELD: dict[str, tuple[int, str]] = {
    "whole": (2, "it comes back last: found again on one day, sure on another"),
    "working": (2, "the weight is what was lost: once to feel it, once to know that it stays"),
    "else": (
        1,
        "who has held it once shows it or doesn't: one round tells, and what isn't shown is worked on",
    ),
}
"""The same for who has done the lift before. What was learnt by moving is kept for years and comes back sooner than it
was learnt (Ammons, Farr, Bloch, Neumann, Dey, Marion & Ammons 1958, J Exp Psychol 55:318-328, after a year without
practice; from memory). How many days: common practice, no source."""

WORK_UP_S = {Load.LIGHT: 60, Load.WORKING: 120}
"""Working up to a weight, s: a round unloaded first (what can't be held unloaded today isn't loaded today), and one
lighter set more on the way to working weight. Common practice, no source."""


class Form(NamedTuple):
    """A drill at one load. `n` is its place in the plan's list, `drill_n` that of its drill.

    `lighter` and `heavier` are the forms of the same drill before and after it; `whole` says whether the drill puts
    most together; of each group of `needs` one form must be met first. `known` says that the lifter has held it once;
    `at_home`, that it can be done there. Times are whole minutes, rounded up, so that what a session shows adds up:
    `new` the first time, `work` the full dose, `check` one round.
    """

    n: int
    drill_n: int
    drill: Drill
    load: Load
    dials: Dials
    kind: str
    exposures: int
    lighter: int | None
    heavier: int | None
    new: int
    work: int
    check: int
    is_lift: bool
    whole: bool
    needs: tuple[tuple[int, ...], ...]
    known: bool = False
    at_home: bool = True

    @property
    def shown(self) -> bool:
        """Whether its first time is the first time that the drill is shown."""
        return self.lighter is None and not self.known

    @property
    def prepares(self) -> bool:
        """Whether it opens joints and no more."""
        return self.drill.stage is Stage.PREPARE

    def minutes(self, exposure: int, *, again: bool = False) -> int:
        """How long an exposure takes, min: the last that is expected is a check, and so is any after it.

        `again` if it was tried and not met: what was known is then worked on.
        """
        if exposure == 1:
            return self.work if again and self.known else self.new
        return self.work if exposure < self.exposures else self.check


def kind_of(entry: PathEntry) -> str:
    """Which row of `EXPOSURES` a drill falls under at its first load."""
    stage, dials = entry.drill.stage, entry.dials
    if stage is Stage.PREPARE:
        return "prepare"
    if stage is Stage.WHOLE or (dials.speed is Speed.FULL and dials.catch is Catch.FULL):
        return "whole"
    if dials.speed is Speed.HELD:
        return "held"
    return "fast" if dials.speed is Speed.FULL else "slow"


def _loads(entries: Iterable[PathEntry]) -> tuple[Load, ...]:
    """The loads a drill is done at, least first: those of the path, and unloaded before any that is loaded."""
    entries = tuple(entries)
    found = {entry.load for entry in entries}
    drill = entries[0].drill
    if min(found) >= Load.LIGHT and drill.load[0] <= Load.STICK:
        found.add(Load.STICK)
    return tuple(sorted(found))


def _needs(drill: Drill, before: Iterable[Form]) -> tuple[tuple[int, ...], ...]:
    """Per group of a drill, the forms of which one must be met first.

    A group of which nothing stands before the drill in its path is held.
    """
    firsts = {form.drill.id: form.n for form in before if form.lighter is None}
    groups = (tuple(firsts[member] for member in group if member in firsts) for group in drill.groups)
    return tuple(group for group in groups if group)


def _times(row: str, load: Load, *, known: bool) -> int:
    """On how many days a form is met until it is held."""
    if not known:
        return EXPOSURES[row][0]
    return ONCE_HELD["working" if load is Load.WORKING else row if row in ONCE_HELD else "else"][0]


def _can_at_home(drill: Drill, load: Load, dials: Dials, home: frozenset[ItemId] | None, path: Path) -> bool:
    """Whether a drill can be done at this load with what is at home, nothing of it capped."""
    fitted = None if home is None else fit(drill, home, path.shelf.items)
    if fitted is None:
        return home is None
    return load <= fitted.load and dials.speed <= fitted.speed and dials.catch <= fitted.catch


def forms_of(path: Path, *, known: bool = False, home: frozenset[ItemId] | None = None) -> tuple[Form, ...]:
    """A path's drills in its order, each at its loads, least first.

    A drill that the path has at a light weight, and that makes sense with a stick, is done with a stick first. A
    drill's loads stand together; only the first of them is bound by the path's order. With `known` the lifter has done
    the lift before: a form is looked at, and held where its standard is met. `home` is what is at home, for who
    practises there too.
    """
    by_drill: dict[str, list[PathEntry]] = {}
    for entry in path.entries:
        by_drill.setdefault(entry.drill.id, []).append(entry)
    found: list[Form] = []
    for drill_n, entries in enumerate(by_drill.values()):
        drill, loads, kind = entries[0].drill, _loads(entries), kind_of(entries[0])
        needs = _needs(drill, found)
        for at, load in enumerate(loads):
            first, last = at == 0, at == len(loads) - 1
            row = kind if first and last else "again" if first else "heavier"
            more = 0 if first else WORK_UP_S.get(load, 0)
            work, times = dose.work_seconds(drill) + more, _times(row, load, known=known)
            check = dose.minutes(dose.check_seconds(drill) + more)
            first_time = work + (drill.teach_s if first and not known else 0)
            found.append(
                Form(
                    n=len(found),
                    drill_n=drill_n,
                    drill=drill,
                    load=load,
                    dials=entries[0].dials._replace(load=load),
                    kind=row,
                    exposures=times,
                    lighter=None if first else len(found) - 1,
                    heavier=None if last else len(found) + 1,
                    new=check if times == 1 else dose.minutes(first_time),
                    work=dose.minutes(work),
                    check=check,
                    is_lift=drill.id == path.shelf.lift.drill,
                    whole=kind == "whole",
                    needs=needs,
                    known=known,
                    at_home=_can_at_home(drill, load, entries[0].dials, home, path),
                )
            )
    return tuple(found)
