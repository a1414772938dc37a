"""A drill by itself, as an entry: what stands in no chain is told as a chain's drill is."""

from collections.abc import Iterator, Sequence

from kb.ask.matter import Matter
from kb.ask.route import Entry
from kb.dose import work_seconds
from kb.evidence import addresses
from kb.kit import gear_at
from kb.terms import Drill, DrillId, Load

__all__ = ["MOST_IN_FULL", "alone", "strengthening"]

MOST_IN_FULL = 3
"""Strengthening drills told in full after a chain; the others are named."""


def alone(matter: Matter, drill: Drill, load: Load) -> Entry:
    """A drill at full dose and one load, with the question's gear; nothing comes before it, so nothing changes."""
    worked = matter.worked
    return Entry(
        drill=drill,
        load=load,
        dials=matter.dials(drill, load),
        work=True,
        seconds=work_seconds(drill),
        addresses=tuple(cause.id for cause in worked.causes if addresses(drill, worked, cause, load)),
        tests=matter.tests(drill, load),
        gear=gear_at(matter.fits[drill.id], load, matter.question.have, matter.shelf.items),
        step=None,
        changes=(),
        gone=matter.gone(drill, load),
    )


def strengthening(matter: Matter, finish: Sequence[Drill], done: frozenset[DrillId]) -> tuple[Entry, ...]:
    """The first of a chain's strengthening drills, to be told in full; `done` are the chain's drills.

    Of one that builds on a drill which is in doubt and not in the chain, that drill is told instead, if it acts on the
    cause and can be done: it is what comes first. At its most where all that it builds on is held; where some of that
    is done only now, no more than light: as in a session.
    """

    def entries() -> Iterator[Entry]:
        told = set(done)
        for drill in finish:
            doubted = matter.groups_in_doubt(drill)
            waiting = [group for group in doubted if not done & set(group)]
            if not waiting:
                least, most = drill.load[0], min(drill.load[1], matter.fits[drill.id].load)
                yield alone(matter, drill, min(most, max(Load.LIGHT, least)) if doubted else most)
                continue
            for before in (
                matter.shelf.drills[member] for group in waiting for member in group if member in matter.doable
            ):
                load = min(before.load[1], matter.fits[before.id].load, matter.limit)
                if before.id not in told and matter.addresses(before, load):
                    told.add(before.id)
                    yield alone(matter, before, load)

    return tuple(entries())[:MOST_IN_FULL]
