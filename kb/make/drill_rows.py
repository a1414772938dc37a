"""The catalogue's rows for drills, in the order of the columns of tables.sql."""

from collections.abc import Iterator
from pathlib import PurePosixPath

from kb.dose import check_seconds, work_seconds
from kb.make.library import Library
from kb.make.rows import Row, Rows, compact, stored
from kb.terms import Drill

__all__ = ["DRILL_ROWS"]


def _family(library: Library, drill: Drill) -> str:
    source = library.sources.get(drill.id)
    return PurePosixPath(source.file).parent.name if source else ""


def _drill(library: Library) -> Iterator[Row]:
    for drill in library.drills.values():
        dose, standard, (least, most) = drill.dose, drill.standard, drill.load
        tempo = "-".join(map(str, dose.tempo)) if dose.tempo else None
        yield (
            *(drill.id, drill.name, compact(drill.also), _family(library, drill), drill.stage.word),
            *(drill.speed.word, least.word, most.word, drill.catch.word, drill.feet),
            *(dose.rounds, dose.reps, tempo, dose.hold_s, dose.sides, dose.rest_s),
            *(dose.good, dose.success if dose.good else None, dose.every_s, drill.set_up_s, drill.teach_s),
            *(work_seconds(drill), check_seconds(drill)),
            *(standard.count, standard.of, standard.seen, int(drill.bridge)),
            *(drill.turn_up, drill.suits, drill.not_for, *stored("drill", drill)),
        )


def _drill_lift(library: Library) -> Iterator[Row]:
    for drill in library.drills.values():
        for lift in dict.fromkeys(drill.lifts):
            first, last = drill.reach.get(lift, (None, None))
            yield drill.id, lift, drill.target_position.get(lift), first, last


def _drill_leaves_out(library: Library) -> Iterator[Row]:
    return ((drill.id, point) for drill in library.drills.values() for point in dict.fromkeys(drill.leaves_out))


def _drill_aid(library: Library) -> Iterator[Row]:
    return ((drill.id, n, aid) for drill in library.drills.values() for n, aid in enumerate(drill.aid))


def _drill_fault(library: Library) -> Iterator[Row]:
    return ((drill.id, said.fault, said.cause) for drill in library.drills.values() for said in drill.faults)


def _prerequisite(library: Library) -> Iterator[Row]:
    for drill in library.drills.values():
        for n, group in enumerate(drill.prerequisites):
            for member in dict.fromkeys(group):
                yield drill.id, n, member


def _part(library: Library) -> Iterator[Row]:
    return ((drill.id, n, part) for drill in library.drills.values() for n, part in enumerate(drill.made_of))


def _regression(library: Library) -> Iterator[Row]:
    for drill in library.drills.values():
        for n, regression in enumerate(drill.regressions):
            yield drill.id, n, regression.drill, regression.eases


def _drill_equipment(library: Library) -> Iterator[Row]:
    return ((drill.id, n, item) for drill in library.drills.values() for n, item in enumerate(drill.equipment))


def _drill_opens(library: Library) -> Iterator[Row]:
    return ((drill.id, opens) for drill in library.drills.values() for opens in dict.fromkeys(drill.opens))


def _drill_for(library: Library) -> Iterator[Row]:
    return ((drill.id, place) for drill in library.drills.values() for place in dict.fromkeys(drill.for_positions))


def _caution(library: Library) -> Iterator[Row]:
    return ((drill.id, n, caution) for drill in library.drills.values() for n, caution in enumerate(drill.cautions))


DRILL_ROWS: Rows = {
    "drill": _drill,
    "drill_lift": _drill_lift,
    "drill_leaves_out": _drill_leaves_out,
    "drill_aid": _drill_aid,
    "drill_fault": _drill_fault,
    "prerequisite": _prerequisite,
    "part": _part,
    "regression": _regression,
    "drill_equipment": _drill_equipment,
    "drill_opens": _drill_opens,
    "drill_for": _drill_for,
    "caution": _caution,
}
"""Table to the function that gives its rows, in the order in which they are written."""
