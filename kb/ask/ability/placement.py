"""Which check to do next, and what is held: placing a lifter by a few drills.

From the answers alone, so that a placement broken off goes on where it was.
"""

from collections.abc import Collection, Mapping, Sequence
from functools import reduce
from math import log2
from operator import and_
from typing import Literal, NamedTuple, get_args

from kb.ask.ability.blim import Rates, gain, held, likely_after, rates_of
from kb.ask.ability.structure import Structure
from kb.errors import BadInput, NoAnswer
from kb.kit import Gear, fit, gear_at, loads
from kb.terms import Catch, Drill, DrillId, Item, ItemId, Lift, Load

__all__ = [
    "ENOUGH",
    "SAYS",
    "Answer",
    "Check",
    "Placement",
    "Says",
    "budget_for",
    "checks_of",
    "place",
    "shown",
]

Says = Literal["yes", "no", "skip"]
SAYS: tuple[Says, ...] = get_args(Says)

ENOUGH = 0.9
"""How likely one state must be before nothing more is asked."""

LIKELY = 0.5
"""How likely what a check is built on must be held before it is asked."""

A_HAIR = 1e-9
"""What rounding may come to: shares and bits nearer than this are the same."""


class Answer(NamedTuple):
    """What came of a check: its standard was met, or not, or it wasn't done and isn't to be asked again."""

    id: DrillId
    answer: Says


class Check(NamedTuple):
    """A drill that places a lifter, at the least load it makes sense at with what is there.

    A guarded one, with a bar in the hands or a full-depth catch overhead, comes only after what it is built on was
    shown. `gear` is None where what is there won't do: then only an answer given elsewhere counts.
    """

    drill: Drill
    load: Load
    gear: tuple[Gear, ...] | None
    guarded: bool


class Placement(NamedTuple):
    """Where answers have led: `state` is the likeliest, as bits over the structure's items, `sure` how likely it is.

    `next` is None when enough is known, the budget is spent, or nothing that may be asked is left.
    """

    lift: Lift
    structure: Structure
    checks: Mapping[DrillId, Check]
    answers: tuple[Answer, ...]
    budget: int
    likely: tuple[float, ...]
    state: int
    sure: float
    next: Check | None

    @property
    def asked(self) -> int:
        """How many checks were answered; one that was skipped costs nothing."""
        return sum(answer.answer != "skip" for answer in self.answers)

    @property
    def holds(self) -> tuple[DrillId, ...]:
        """The checkpoints in the likeliest state."""
        return tuple(item for n, item in enumerate(self.structure.items) if self.state >> n & 1)


def checks_of(
    lift: Lift,
    drills: Mapping[DrillId, Drill],
    have: Collection[ItemId],
    items: Mapping[ItemId, Item],
    *,
    answered: Collection[DrillId] = (),
) -> dict[DrillId, Check]:
    """The lift's checkpoints that can be done with what is there, or were answered before, in their order.

    Raises NoAnswer if the lift has none, or none of them can be done.
    """
    if not lift.checkpoints:
        raise NoAnswer(f"no drills are named that place a lifter in the {lift.name.lower()}")
    found = {}
    for drill_id in lift.checkpoints:
        drill = drills[drill_id]
        fitted = fit(drill, have, items)
        if fitted is not None:
            load = loads(drill, fitted, Load.WORKING)[0]
            gear = gear_at(fitted, load, have, items)
            found[drill_id] = Check(drill, load, gear, _guarded(drill, load, gear))
        elif drill_id in answered:
            found[drill_id] = Check(drill, drill.load[0], None, guarded=True)
    if not found:
        raise NoAnswer(f"none of the checks for the {lift.name.lower()} can be done with what is there")
    return found


def _guarded(drill: Drill, load: Load, gear: Collection[Gear]) -> bool:
    overhead = "head-clearance" in drill.cautions or "headroom" in drill.equipment
    with_bar = load >= Load.LIGHT or any(each.using == "bar" for each in gear)
    return with_bar or (overhead and drill.catch is Catch.FULL)


def budget_for(states: int) -> int:
    """Checks that place a lifter among so many states, where nobody says otherwise: 1.5 log2(states) + 1."""
    return int(1.5 * log2(states) + 1)


def place(
    lift: Lift,
    found: Structure,
    checks: Mapping[DrillId, Check],
    answers: Sequence[Answer] = (),
    *,
    budget: int | None = None,
    rates: Rates | None = None,
    prior: Sequence[float] | None = None,
) -> Placement:
    """What the answers say is held, and the check that tells most next.

    `found` are the states on the checks, in their order; `budget` is how many checks may be answered in all. Raises
    BadInput for a budget below 1 and for an answer to what is no check here.
    """
    if budget is not None and budget < 1:
        raise BadInput(f"a budget is one check or more, not {budget}")
    for answer in answers:
        if answer.id not in checks:
            raise BadInput(f"`{answer.id}` isn't one of the checks for the {lift.name.lower()} here")
    rates = rates or rates_of(len(checks))
    number = {item: n for n, item in enumerate(found.items)}
    given = [(number[each.id], each.answer == "yes") for each in answers if each.answer != "skip"]
    likely = likely_after(found, given, rates, prior)
    best = max(range(len(likely)), key=lambda n: likely[n])
    budget = budget_for(len(found.states)) if budget is None else budget
    ask = likely[best] < ENOUGH and len(given) < budget
    chosen = _next(found, checks, answers, likely, rates) if ask else None
    return Placement(lift, found, checks, tuple(answers), budget, likely, found.states[best], likely[best], chosen)


def _next(
    found: Structure,
    checks: Mapping[DrillId, Check],
    answers: Sequence[Answer],
    likely: Sequence[float],
    rates: Rates,
) -> Check | None:
    """Of the checks that may be asked, the one after which least is left unknown; the first in order of several."""
    skipped = {answer.id for answer in answers if answer.answer == "skip"}
    seen = shown(found, answers)
    best: tuple[float, Check | None] = (0, None)
    for n, (drill_id, check) in enumerate(checks.items()):
        if drill_id in skipped or check.gear is None or not _may_be_asked(found, check, n, seen, likely):
            continue
        tells = gain(rates, n, held(found, likely, 1 << n))
        if tells > best[0] + A_HAIR:
            best = tells, check
    return best[1]


def _may_be_asked(found: Structure, check: Check, item: int, seen: int, likely: Sequence[float]) -> bool:
    """Whether what the check is built on is likely held; before a guarded one, whether it was shown, or is certain.

    Certain it is only where no allowance is made for errors: else nothing that wasn't tried would ever be.
    """
    for clause in found.clauses[item]:
        share = held(found, likely, clause)
        if share > LIKELY - A_HAIR and (not check.guarded or clause & seen == clause or share > 1 - A_HAIR):
            return True
    return False


def shown(found: Structure, answers: Sequence[Answer]) -> int:
    """What was passed when it was last checked, and what every state that holds all of that holds too.

    What failed when it was last checked isn't shown, whatever was passed above it.
    """
    latest = {answer.id: answer.answer == "yes" for answer in answers if answer.answer != "skip"}
    passed = sum(1 << n for n, item in enumerate(found.items) if latest.get(item))
    failed = sum(1 << n for n, item in enumerate(found.items) if latest.get(item) is False)
    below = reduce(and_, (state for state in found.states if state & passed == passed), -1)
    return passed | (below & ~failed if below >= 0 else 0)
