"""What a plan may be asked for besides: a day and a weight, sessions at home, a lift that was done before."""

import sqlite3
from collections.abc import Callable
from typing import Any, NamedTuple, TypeVar

import click

from kb.ask import read
from kb.ask.names import resolve_any
from kb.ask.plan.away import Away
from kb.ask.plan.block import MOST_FINISH
from kb.ask.plan.lessons import MOST_LESSONS
from kb.ask.plan.plan import Home
from kb.ask.plan.teaching import MOST_IN_LESSON
from kb.ask.plan.weeks import MOST_A_WEEK, MOST_LOOKED_AT, MOST_NEW
from kb.ask.shelf import Shelf
from kb.commands.asked import room_of
from kb.errors import BadInput
from kb.terms import DrillId, ItemId, LiftId

__all__ = [
    "MOST_WEEKS",
    "TURNS",
    "Wishes",
    "at_home",
    "away_of",
    "check_lessons",
    "home_of",
    "weak_of",
    "wish_options",
]

MOST_WEEKS = 104
"""Weeks to a day at most; more is a slip of the pen."""

LEAST_OPENER = 70
"""The lightest first try that can be asked for, in per cent of the wish."""

Command = TypeVar("Command", bound=Callable[..., Any])


class _Turns(click.ParamType[tuple[int, ...]]):
    """Sessions a week: a number, or several with commas for weeks by turns."""

    name = "turns"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> tuple[int, ...]:
        """The numbers; what is none, and what no week can have, is refused as click does it."""
        if isinstance(value, tuple):
            return value
        counts = click.IntRange(1, MOST_A_WEEK)
        return tuple(counts.convert(each.strip(), param, ctx) for each in value.split(","))


TURNS = _Turns()
"""The type of `--per-week`."""


class Wishes(NamedTuple):
    """A plan's further options, as typed."""

    weeks: int | None
    by: str | None
    weight: str | None
    first: str | None
    bar: str
    new: int | None
    returning: bool
    weak: str | None
    home_days: int
    home_kit: str | None
    home_have: str | None
    away: str | None
    away_have: str | None
    lessons: int | None
    stiff: str | None
    afraid: bool
    squats: int | None
    finish: int | None
    also: str | None
    also_weight: str | None
    also_from: str | None
    best: str | None
    also_best: str | None
    opener: int | None
    spare: str | None
    per_cent: bool


def wish_options(command: Command) -> Command:
    """Add the day and all that is about it, `--bar`, `--new`, `--returning`, lessons, sessions at home, weeks away."""
    for option in (*_after_the_day(), *_besides(), *_the_day()):
        command = option(command)
    return command


Option = Callable[[Any], Any]


def _after_the_day() -> tuple[Option, ...]:
    """How the first try is taken, a second lift, and how much strengthens; the last comes first in the help."""
    return (
        click.option(
            "--opener",
            type=click.IntRange(LEAST_OPENER, 98),
            metavar="PERCENT",
            help="The first try, in per cent of the wish; 92 if nothing is said. Lower after a day with no lift made.",
        ),
        click.option(
            "--per-cent",
            is_flag=True,
            help="For several: weights in per cent of each one's best, of the second lift too.",
        ),
        click.option("--spare", metavar="A", help="What takes long to be fresh again: back (no hinge or slow pull)."),
        click.option("--also-best", metavar="KG", help="As --best, of the second lift."),
        click.option("--also-from", metavar="KG", help="What goes of it today, done well; else 60 % of it."),
        click.option("--also-weight", metavar="KG", help="What is to be lifted of the second lift on the day."),
        click.option(
            "--also",
            metavar="LIFT",
            help="A second lift for the day, held today: it begins each session; in lessons, by turns.",
        ),
        click.option(
            "--finish",
            type=click.IntRange(0, MOST_FINISH),
            metavar="N",
            help=f"Drills that strengthen after the lift in a session at most; {MOST_FINISH} if nothing is said.",
        ),
        click.option(
            "--squats",
            type=click.IntRange(0, MOST_A_WEEK),
            metavar="N",
            help="Sessions a week with a squat at most, once the lift is built up; a lift from the floor is none.",
        ),
    )


def _besides() -> tuple[Option, ...]:
    """Lessons, weeks away, sessions at home, and how a plan teaches."""
    return (
        click.option(
            "--lessons",
            type=click.IntRange(1, MOST_LESSONS),
            help="So many lessons and no more, 1 for a first evening: each filled, and ending in a movement.",
        ),
        click.option("--afraid", is_flag=True, help="With --lessons: small steps, the way out first, less each time."),
        click.option("--stiff", metavar="J1,J2", help="With --lessons: joints that are stiff, as in ankle,wrist."),
        click.option("--away-have", metavar="A,B", help="Exactly what there is in weeks away; nothing if not said."),
        click.option("--away", metavar="W1,W2", help="Weeks without sessions, counted from 1: --away 5, or 5,9."),
        click.option("--home-have", metavar="A,B", help="Exactly what is at home, instead of a kit."),
        click.option("--home-kit", metavar="KIT", help="What there is at home; home if nothing is said."),
        click.option(
            "--home-days",
            type=click.IntRange(0, MOST_A_WEEK - 1),
            default=0,
            show_default=True,
            help="Sessions a week alone at home besides: nothing new there, no working weight.",
        ),
        click.option(
            "--returning", is_flag=True, help="The lift was done before: look at each drill, teach what isn't."
        ),
        click.option(
            "--new",
            type=click.IntRange(1, MOST_LOOKED_AT),
            help=f"New drills in one session at most: {MOST_NEW} if nothing is said, in lessons {MOST_IN_LESSON}.",
        ),
        click.option(
            "--bar", default="men", show_default=True, metavar="BAR", help="men, women or training; or its kg."
        ),
    )


def _the_day() -> tuple[Option, ...]:
    """When it is, what is to be lifted on it, and what lags behind."""
    return (
        click.option("--weak", metavar="PART", help="The part of the lift that lags behind: it begins each week."),
        click.option("--from", "first", metavar="KG", help="What goes today, done well; else 60 % of --weight."),
        click.option("--best", metavar="KG", help="The best so far: the wish is a little more, 2 % and 1 kg at least."),
        click.option("--weight", metavar="KG", help="What is to be lifted on the day."),
        click.option("--by", metavar="YYYY-MM-DD", help="The day to be ready by."),
        click.option("--weeks", type=click.IntRange(1, MOST_WEEKS), help="How many weeks there are."),
    )


def check_lessons(wishes: Wishes, to: str | None, per_week: tuple[int, ...]) -> None:
    """Raise BadInput for what can't stand beside a number of lessons, and for a stiff joint without one."""
    if wishes.lessons is None:
        if wishes.stiff is not None:
            raise BadInput("--stiff fits lessons to a stiff body: say with --lessons how many there are")
        if wishes.afraid:
            raise BadInput("--afraid fits lessons to who is afraid: say with --lessons how many there are")
        return
    beside = {
        "weeks": wishes.weeks,
        "by": wishes.by,
        "to": to,
        "returning": wishes.returning or None,
        "home-days": wishes.home_days or None,
        "away": wishes.away,
        "away-have": wishes.away_have,
        "weak": wishes.weak,
        "squats": wishes.squats,
        "finish": wishes.finish,
        "also-weight": wishes.also_weight,
        "also-from": wishes.also_from,
        "best": wishes.best,
        "also-best": wishes.also_best,
        "opener": wishes.opener,
        "spare": wishes.spare,
    }
    if wishes.also is not None and wishes.lessons < 2:
        raise BadInput("--also takes turns with the lift, a lesson each: say --lessons 2 at least")
    for name, said in beside.items():
        if said is not None:
            raise BadInput(f"--lessons finds the furthest part that they hold, so it can't stand with --{name}")
    if len(per_week) > 1:
        raise BadInput("--lessons are so many and no more: with them --per-week takes one number")


def other_lift(db: sqlite3.Connection, shelf: Shelf, wishes: Wishes) -> Shelf | None:
    """The lift that takes turns with a shelf's in lessons, None without one. Raises BadInput for one that can't."""
    if wishes.also is None:
        return None
    from kb.ask.names import resolve

    lift = LiftId(resolve(db, "lift", wishes.also))
    if lift == shelf.lift.id:
        raise BadInput(f"--also {lift} is the lift itself: name another")
    return read.shelf(db, lift)


def at_home(db: sqlite3.Connection, wishes: Wishes) -> frozenset[ItemId] | None:
    """What is said to be at home, listed or as a kit; None where nothing is.

    Raises BadInput for a kit or an item that is unknown, and for both at once.
    """
    if wishes.home_have is None and wishes.home_kit is None:
        return None
    if wishes.home_have is not None and wishes.home_kit is not None:
        raise BadInput("--home-have lists exactly what is at home, so it can't stand with --home-kit")
    return room_of(db, wishes.home_kit, wishes.home_have).have


def home_of(db: sqlite3.Connection, wishes: Wishes) -> Home | None:
    """The sessions at home and what is there; None without any.

    Raises BadInput for a kit or an item that is unknown, both at once, and what is at home without days there.
    """
    if not wishes.home_days and wishes.home_have is None:
        return None
    there = at_home(db, wishes)
    if not wishes.home_days:
        raise BadInput("--home-have lists what is at home: say with --home-days how many sessions a week are there")
    return Home(wishes.home_days, room_of(db, "home", None).have if there is None else there)


def away_of(db: sqlite3.Connection, wishes: Wishes) -> Away:
    """The weeks away and what there is in them; none without any.

    Raises BadInput for what is no week, and for what there is without a week.
    """
    if wishes.away is None:
        if wishes.away_have is not None:
            raise BadInput("--away-have lists what there is in weeks away: say with --away which weeks they are")
        return Away(())
    weeks = []
    for said in wishes.away.split(","):
        if not said.strip().isdecimal() or not 1 < int(said) <= MOST_WEEKS:
            raise BadInput(f"--away {said.strip()!r} is no week away; write numbers from 2 to {MOST_WEEKS}, as in 5,9")
        weeks.append(int(said))
    have = room_of(db, None, wishes.away_have).have if wishes.away_have is not None else frozenset()
    return Away(tuple(sorted(set(weeks))), have)


def weak_of(db: sqlite3.Connection, shelf: Shelf, wishes: Wishes) -> DrillId | None:
    """The drill of the part that lags behind: one named, or that of a lift that is part of this; None without one.

    Raises BadInput, with what would do, for a part without a day, another lift, and what is no drill.
    """
    if wishes.weak is None:
        return None
    if wishes.weeks is None and wishes.by is None:
        raise BadInput("--weak says what lags behind while the lift is built up to a day: name it with --weeks or --by")
    kind, found = resolve_any(db, wishes.weak, lift=shelf.lift.id)
    if kind == "drill":
        return DrillId(found)
    if kind == "lift" and LiftId(found) in shelf.lift.parts:
        return read.shelf(db, LiftId(found)).lift.drill
    raise BadInput(f"{found} is no part of the {shelf.lift.name.lower()}", nearest=shelf.lift.parts)
