"""The day that a plan goes to, as typed: when, what is to be lifted on it, a second lift, and how much strengthens."""

import sqlite3
from collections.abc import Callable
from datetime import date

from kb.ask import read
from kb.ask.names import resolve
from kb.ask.path import Path
from kb.ask.plan.block import LIMITS, SPARES, Limits
from kb.ask.plan.kilograms import Goal, from_best
from kb.ask.plan.second import Also
from kb.ask.shelf import Shelf
from kb.commands.plan_asked import MOST_WEEKS, Wishes
from kb.discs import iron_of, weight
from kb.errors import BadInput
from kb.terms import LiftId

__all__ = ["also_of", "goal_of", "limits_of"]


def goal_of(wishes: Wishes, begins: date | None) -> Goal | None:
    """The day and the weight that were wished for; None where no day was named.

    `begins` is the next session's date, today where none was said. Raises BadInput, in one sentence, for a date that
    isn't one or has passed, two days at once, a weight without a day, and what is no weight.
    """
    if wishes.weeks is None and wishes.by is None:
        if wishes.weight is not None or wishes.first is not None:
            raise BadInput("--weight and --from say what is lifted on a day: name it with --weeks or --by")
        if wishes.per_cent:
            raise BadInput("--per-cent is about what is lifted on a day: name it with --weeks or --by")
        for name in ("best", "opener"):
            if getattr(wishes, name) is not None:
                raise BadInput(f"--{name} is about what is lifted on a day: name it with --weeks or --by")
        return None
    if wishes.weeks is not None and wishes.by is not None:
        raise BadInput("--weeks and --by both name the day; give one")
    days = 7 * wishes.weeks - 1 if wishes.weeks is not None else _days(wishes.by or "", begins or date.today())
    if wishes.per_cent:
        return _in_per_cent(days, wishes)
    kg, first = _wish(wishes.weight, wishes.first, wishes.best, "")
    if kg is None and wishes.opener is not None:
        raise BadInput("--opener is a share of what is to be lifted: say with --weight or --best what that is")
    best = weight(wishes.best, "--best") if wishes.best is not None else None
    return Goal(days, kg, first, iron_of(wishes.bar).bar, _opener(wishes), best)


def _in_per_cent(days: int, wishes: Wishes) -> Goal:
    """The same for several: their bests are the hundred. Raises BadInput for kilograms beside it."""
    for name in ("weight", "best", "from", "also-weight", "also-best", "also-from"):
        if getattr(wishes, {"from": "first"}.get(name, name.replace("-", "_"))) is not None:
            raise BadInput(f"--per-cent is for several lifters, so it can't stand with --{name}")
    kg, first = from_best(100)
    return Goal(days, kg, first, 0, _opener(wishes), 100, "%")


def _opener(wishes: Wishes) -> float | None:
    return None if wishes.opener is None else wishes.opener / 100


def _wish(said: str | None, first: str | None, best: str | None, also: str) -> tuple[float | None, float | None]:
    """What is wished for and what goes today, kg: as said, or from the best so far; None where it wasn't said.

    Raises BadInput for a best beside a weight, a first weight without either, and what is no weight.
    """
    if best is not None:
        for name, other in (("weight", said), ("from", first)):
            if other is not None:
                raise BadInput(f"--{also}best says both where it begins and where it goes: leave out --{also}{name}")
        return from_best(weight(best, f"--{also}best"))
    if said is None and first is not None:
        raise BadInput(f"--{also}from says where the weight begins: say with --{also}weight where it goes")
    kg = weight(said, f"--{also}weight") if said is not None else None
    return kg, weight(first, f"--{also}from") if first is not None else None


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


def limits_of(wishes: Wishes) -> Limits:
    """How much there may be of what strengthens.

    Raises BadInput for a limit without a day: until the lift is held nothing strengthens.
    """
    said = {name: getattr(wishes, name) for name in ("squats", "finish") if getattr(wishes, name) is not None}
    if said and wishes.weeks is None and wishes.by is None:
        raise BadInput(f"--{next(iter(said))} is about the weeks up to a day: name it with --weeks or --by")
    spares = frozenset(each.strip() for each in (wishes.spare or "").split(",") if each.strip())
    for each in sorted(spares):
        if each not in SPARES:
            raise BadInput(f"--spare doesn't know {each!r}: it is {', '.join(SPARES)}", nearest=tuple(SPARES))
    if spares and wishes.weeks is None and wishes.by is None:
        raise BadInput("--spare is about the weeks up to a day: name it with --weeks or --by")
    return LIMITS._replace(**said, spares=frozenset(SPARES[each] for each in spares))


def also_of(db: sqlite3.Connection, wishes: Wishes, goal: Goal | None, way: Callable[[Shelf], Path]) -> Also | None:
    """The second lift for the day, `way` being how its path is found; None without one.

    Raises BadInput for an unknown lift, and for a lift without a weight or a weight without a lift.
    """
    if wishes.also is None:
        if wishes.also_weight is not None or wishes.also_from is not None or wishes.also_best is not None:
            raise BadInput("--also-weight, --also-from and --also-best are about a second lift: name it with --also")
        return None
    lift = LiftId(resolve(db, "lift", wishes.also))
    if goal is not None and wishes.per_cent:
        return Also(way(read.shelf(db, lift)), goal)
    if wishes.also_weight is None and wishes.also_best is None:
        raise BadInput(
            "--also names a second lift: say with --also-weight what is to be lifted of it on the"
            " day, or ask for the whole --per-cent"
        )
    best = weight(wishes.also_best, "--also-best") if wishes.also_best is not None else None
    kg, first = _wish(wishes.also_weight, wishes.also_from, wishes.also_best, "also-")
    its = Goal(goal.days if goal is not None else 0, kg, first, iron_of(wishes.bar).bar, _opener(wishes), best)
    return Also(way(read.shelf(db, lift)), its)
