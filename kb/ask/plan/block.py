"""A block of weeks: each weekday has the same strengthening drills until the next light week, so that each can grow.

A drill that comes every week can be put up by its own rule; one that comes once a month is begun anew each time. The
next block keeps the main drills and exchanges the others. Common practice, no source.
"""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.plan.forms import Form
from kb.ask.plan.weeks import MOST_A_WEEK, Weeks
from kb.terms import Catch, Drill, LiftId, Load, Speed

__all__ = [
    "LIMITS",
    "MOST_FINISH",
    "SPARES",
    "SQUAT",
    "Limits",
    "dealt",
    "family",
    "queue",
    "sparing",
    "squats_of",
    "turned",
    "weekday",
]

MOST_FINISH = 4
"""Strengthening drills in a session at most. Common practice, no source."""

SQUAT = "squat"
"""The family of both legs bent all the way, slowly, in repetitions: no lift from the floor is one."""


class Limits(NamedTuple):
    """How many sessions a week may have a squat, how many drills may strengthen in one, and families left out."""

    squats: int = MOST_A_WEEK
    finish: int = MOST_FINISH
    spares: frozenset[str] = frozenset()


SPARES = {"back": "hinge"}
"""What may take long to be fresh again, and the family that is left out for it. Common practice, no source."""

LIMITS = Limits()
"""Where nothing was asked for."""

MAIN = (SQUAT, "hinge", "drive")
"""What each block has one of, if the library and the room do: common practice, no source."""

ONCE_A_SESSION = frozenset({SQUAT, "hinge"})
"""What a session has one of at most: legs, and a back held in a lean, are good for one."""


def family(drill: Drill) -> str:
    """What a strengthening drill trains: squat, hinge (the back in a lean), drive (overhead too), or aside.

    Aside are carries, holds, one-sided work, and the lift itself done for breath. Common practice, no source.
    """
    if drill.dose.sides > 1 or not drill.dose.reps or (drill.speed is Speed.FULL and drill.catch is Catch.FULL):
        return "aside"
    if drill.catch is Catch.FULL:
        return SQUAT
    return "drive" if drill.catch is not Catch.NONE or LiftId("jerk") in drill.lifts else "hinge"


def weekday(weeks: Weeks, n: int) -> int:
    """Which of its week's sessions with a coach session `n` is, from 0."""
    return sum(not weeks.at_home(each) for each in range(weeks.week_begins(n), n))


def sparing(finish: Sequence[Form]) -> list[Form]:
    """Of strengthening drills those that leave the legs fresh for the day: presses, no squat, hinge or dip."""
    return [form for form in finish if family(form.drill) == "drive" and form.drill.catch is Catch.STANDING]


def _most(form: Form) -> tuple[int, int, int, str]:
    """Order of what strengthens: most weight first, by its load and its share of a best, then what trains most."""
    share = form.drill.load_from
    return -form.load, -(share.percent[1] if share else 0), -len(form.drill.faults), form.drill.id


def turned(forms: Sequence[Form], by: int) -> list[Form]:
    """The same forms, begun so many places further on."""
    at = by % len(forms) if forms else 0
    return [*forms[at:], *forms[:at]]


def queue(finish: Sequence[Form], block: int, places: int) -> list[Form]:
    """What strengthens in the order in which a block takes it: the main ones, other heavy work by turns, the rest."""
    ordered = sorted(finish, key=_most)
    heavy = [form for form in ordered if form.load is Load.WORKING and family(form.drill) != "aside"]
    firsts = [next((form for form in heavy if family(form.drill) == each), None) for each in MAIN]
    main = [form for form in firsts if form is not None]
    others = [form for form in heavy if form not in main]
    rest = [form for form in ordered if form not in heavy]
    taken = max(places - len(main), 0)
    return [*main, *turned(others, block * taken), *turned(rest, block * max(taken - len(others), 1))]


def dealt(
    finish: Sequence[Form], rooms: Sequence[int], block: int, trained: Sequence[frozenset[str]], limits: Limits = LIMITS
) -> list[list[Form]]:
    """For each weekday of a block what strengthens after the lift, fast before slow, so many at most, each once a week.

    `rooms` are the weekdays' minutes for it, `trained` the families that each has before the lift: none has two squats,
    or two drills that hold the back in a lean; and no more weekdays have a squat than `limits` allow. Dealt out one to
    each weekday in turn, so that none has all.
    """
    left, found = list(rooms), [list[Form]() for _ in rooms]
    left_over = queue(finish, block, limits.finish * len(rooms))
    for _ in range(limits.finish):
        for day, own in enumerate(found):
            squats = sum(SQUAT in families for families in trained) + sum(map(squats_of, found))
            had = trained[day] | {family(each.drill) for each in own} | ({SQUAT} if squats >= limits.squats else set())
            form = next((each for each in left_over if _may(each, left[day], had)), None)
            if form is not None:
                left_over.remove(form)
                own.append(form)
                left[day] -= form.work
    return [
        sorted(own, key=lambda form: (family(form.drill) == "aside", form.dials.speed < Speed.FULL)) for own in found
    ]


def squats_of(forms: Sequence[Form]) -> int:
    """How many squats there are among some drills."""
    return sum(family(form.drill) == SQUAT for form in forms)


def _may(form: Form, room: int, had: frozenset[str]) -> bool:
    kind = family(form.drill)
    return form.work <= room and not (kind in ONCE_A_SESSION and kind in had)
