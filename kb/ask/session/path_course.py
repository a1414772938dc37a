"""The course of a path, in sittings of at most two new drills; and that of drills which a coach names."""

from collections.abc import Iterator, Sequence

from kb.ask.path import Path
from kb.ask.route import Entry
from kb.ask.session.course import Course, cut_course, entry_seconds, least_raise_s, light_finishes, on_bar
from kb.ask.session.worth import at_least_half, one_round
from kb.ask.shelf import Shelf
from kb.dials import at_load, changes, spans, step
from kb.dose import work_seconds
from kb.errors import BadInput, NoAnswer
from kb.kit import gear_at, loads
from kb.terms import Drill, DrillId, ItemId, Load, Stage

__all__ = ["NEW_A_SESSION", "named_course", "path_courses"]

NEW_A_SESSION = 2
"""New drills in one session at most, preparation aside. Common practice, no source."""


def path_courses(
    found: Path, have: frozenset[ItemId], holds: frozenset[DrillId], seconds: int, *, teach: bool
) -> Iterator[Course]:
    """Ways to lead a path through in sittings of `seconds`, the one to prefer first."""
    shelf = found.shelf
    fits = shelf.fits(have)
    entries = tuple(
        Entry(
            drill=each.drill,
            load=each.load,
            dials=each.dials,
            work=True,
            seconds=each.seconds,
            addresses=(),
            tests=False,
            gear=gear_at(fits[each.drill.id], each.load, have, shelf.items),
            step=each.step,
            changes=each.changes,
        )
        for each in found.entries
    )
    named = {member for drill in shelf.drills.values() for group in drill.groups for member in group}
    unsure = frozenset({*shelf.drills, *named}) - holds
    limit = seconds - least_raise_s(shelf, fits, unsure, teach=teach)

    def few(first: int, end: int) -> bool:
        met = {entry.drill.id for entry in entries[: first + 1 if first else 0]}
        fresh = {entry.drill.id for entry in entries[first:end] if entry.drill.stage is not Stage.PREPARE}
        return len(fresh - met) <= NEW_A_SESSION

    for dosed in (at_least_half, one_round):
        timed = [
            entry_seconds(each.drill, dosed(each.drill.dose), discs=on_bar(each.gear, each.load), teach=teach)
            for each in entries
        ]
        shared = [
            entry_seconds(each.drill, one_round(each.drill.dose), discs=on_bar(each.gear, each.load), teach=False)
            for each in entries
        ]
        cut = cut_course(timed, shared, limit, few, [False] * len(entries))
        if cut is not None:
            yield Course(
                shelf,
                have,
                fits,
                entries,
                cut,
                unsure,
                proved=found.optimal,
                finishes=tuple(light_finishes(shelf, fits, unsure, entries)),
            )


def named_course(shelf: Shelf, names: Sequence[DrillId], have: frozenset[ItemId]) -> Course:
    """The drills a coach names, in that order and each at the most up to light that the kit allows, then the lift.

    Raises BadInput for a drill that isn't of the lift, NoAnswer for one that can't be done with what is there.
    """
    lift = shelf.lift
    fits = shelf.fits(have)
    entries: list[Entry] = []
    for drill_id in [*(each for each in names if each != lift.drill), lift.drill]:
        drill = _known(shelf, drill_id)
        if drill_id not in fits:
            raise NoAnswer(
                f"{drill.name} can't be done with what is there; `drillpath swap {drill_id}` says what could"
            )
        load = max(drill.load[0], loads(drill, fits[drill_id], max(Load.LIGHT, drill.load[0]))[-1])
        here = at_load(shelf.dials[drill.id], load, fits[drill_id].speed, fits[drill_id].catch)
        before = entries[-1].dials if entries else None
        entries.append(
            Entry(
                drill=drill,
                load=load,
                dials=here,
                work=True,
                seconds=work_seconds(drill),
                addresses=(),
                tests=False,
                gear=gear_at(fits[drill_id], load, have, shelf.items),
                step=step(before, here, spans(lift)) if before else None,
                changes=changes(before, here, lift.points, spans(lift)) if before else (),
            )
        )
    finishes = tuple(light_finishes(shelf, fits, frozenset(), entries))
    return Course(shelf, have, fits, tuple(entries), ((0, len(entries)),), frozenset(), finishes=finishes)


def _known(shelf: Shelf, drill_id: DrillId) -> Drill:
    drill = shelf.drills.get(drill_id)
    if drill is None:
        raise BadInput(f"{drill_id} is no drill of the {shelf.lift.name.lower()}")
    if drill.stage is Stage.FINISH:
        raise BadInput(f"{drill.name} strengthens: it has no place before the lift")
    return drill
