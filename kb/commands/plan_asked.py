"""What a plan may be asked for besides: a day and a weight, sessions at home, a lift that was done before."""

import sqlite3
from collections.abc import Callable
from datetime import date
from typing import Any, NamedTuple, TypeVar

import click

from kb.ask import read
from kb.ask.names import resolve, resolve_any
from kb.ask.path import Path
from kb.ask.plan.away import Away
from kb.ask.plan.block import LIMITS, MOST_FINISH, Limits
from kb.ask.plan.kilograms import Goal
from kb.ask.plan.lessons import MOST_LESSONS
from kb.ask.plan.plan import Home
from kb.ask.plan.second import Also
from kb.ask.plan.teaching import MOST_IN_LESSON
from kb.ask.plan.weeks import MOST_A_WEEK, MOST_LOOKED_AT, MOST_NEW
from kb.ask.shelf import Shelf
from kb.commands.asked import room_of
from kb.discs import iron_of, weight
from kb.errors import BadInput
from kb.terms import DrillId, ItemId, LiftId

__all__ = [
    "MOST_WEEKS",
    "TURNS",
    "Wishes",
    "also_of",
    "at_home",
    "away_of",
    "check_lessons",
    "goal_of",
    "home_of",
    "limits_of",
    "weak_of",
    "wish_options",
]

MOST_WEEKS = 104
"""Weeks to a day at most; more is a slip of the pen."""

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


def wish_options(command: Command) -> Command:
    """Add the day and its weight, `--bar`, `--new`, `--returning`, sessions at home, weeks away."""
    for option in (
        click.option("--also-from", metavar="KG", help="What goes of it today, done well; else 60 % of it."),
        click.option("--also-weight", metavar="KG", help="What is to be lifted of the second lift on the day."),
        click.option("--also", metavar="LIFT", help="A second lift for the day, held today: it begins each session."),
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
        click.option("--weak", metavar="PART", help="The part of the lift that lags behind: it begins each week."),
        click.option("--from", "first", metavar="KG", help="What goes today, done well; else 60 % of --weight."),
        click.option("--weight", metavar="KG", help="What is to be lifted on the day."),
        click.option("--by", metavar="YYYY-MM-DD", help="The day to be ready by."),
        click.option("--weeks", type=click.IntRange(1, MOST_WEEKS), help="How many weeks there are."),
    ):
        command = option(command)
    return command


def goal_of(wishes: Wishes, begins: date | None) -> Goal | None:
    """The day and the weight that were wished for; None where no day was named.

    `begins` is the next session's date, today where none was said. Raises BadInput, in one sentence, for a date that
    isn't one or has passed, two days at once, a weight without a day, and what is no weight.
    """
    if wishes.weeks is None and wishes.by is None:
        if wishes.weight is not None or wishes.first is not None:
            raise BadInput("--weight and --from say what is lifted on a day: name it with --weeks or --by")
        return None
    if wishes.weeks is not None and wishes.by is not None:
        raise BadInput("--weeks and --by both name the day; give one")
    days = 7 * wishes.weeks - 1 if wishes.weeks is not None else _days(wishes.by or "", begins or date.today())
    if wishes.weight is None and wishes.first is not None:
        raise BadInput("--from says where the weight begins: say with --weight where it goes")
    kg = weight(wishes.weight, "--weight") if wishes.weight is not None else None
    first = weight(wishes.first, "--from") if wishes.first is not None else None
    return Goal(days, kg, first, iron_of(wishes.bar).bar)


def _days(by: str, begins: date) -> int:
    try:
        day = date.fromisoformat(by)
    except ValueError:
        raise BadInput(f"--by {by!r} is no date; write it as 2026-05-01") from None
    days = (day - begins).days
    if days < 0:
        raise BadInput(f"--by {by} is before the next session, {begins}")
    if days > 7 * MOST_WEEKS:
        raise BadInput(f"--by {by} is more than {MOST_WEEKS} weeks away")
    return days


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
        "also": wishes.also,
        "also-weight": wishes.also_weight,
        "also-from": wishes.also_from,
    }
    for name, said in beside.items():
        if said is not None:
            raise BadInput(f"--lessons finds the furthest part that they hold, so it can't stand with --{name}")
    if len(per_week) > 1:
        raise BadInput("--lessons are so many and no more: with them --per-week takes one number")


def limits_of(wishes: Wishes) -> Limits:
    """How much there may be of what strengthens.

    Raises BadInput for a limit without a day: until the lift is held nothing strengthens.
    """
    said = {name: getattr(wishes, name) for name in ("squats", "finish") if getattr(wishes, name) is not None}
    if said and wishes.weeks is None and wishes.by is None:
        raise BadInput(f"--{next(iter(said))} is about the weeks up to a day: name it with --weeks or --by")
    return LIMITS._replace(**said)


def also_of(db: sqlite3.Connection, wishes: Wishes, goal: Goal | None, way: Callable[[Shelf], Path]) -> Also | None:
    """The second lift for the day, `way` being how its path is found; None without one.

    Raises BadInput for an unknown lift, and for a lift without a weight or a weight without a lift.
    """
    if wishes.also is None:
        if wishes.also_weight is not None or wishes.also_from is not None:
            raise BadInput("--also-weight and --also-from are about a second lift: name it with --also")
        return None
    lift = LiftId(resolve(db, "lift", wishes.also))
    if wishes.also_weight is None:
        raise BadInput("--also names a second lift: say with --also-weight what is to be lifted of it on the day")
    kg = weight(wishes.also_weight, "--also-weight")
    first = weight(wishes.also_from, "--also-from") if wishes.also_from is not None else None
    its = Goal(goal.days if goal is not None else 0, kg, first, iron_of(wishes.bar).bar)
    return Also(way(read.shelf(db, lift)), its)


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
