"""What a new drill would have to be to help most: proposals tried one by one, by asking again with each of them there.

Tried are drills for causes that have no chain though one could have, that few drills address, or whose chain has a
large step. What a drill is worth is what it opens and saves over all questions about that cause; what it may do for
others as a stepping stone isn't counted.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from kb.ask.chain import NoChain, solve
from kb.ask.matter import Matter, matter_of
from kb.ask.question import ChainQuestion
from kb.ask.route import Route
from kb.ask.shelf import Shelf, with_drills
from kb.check.asked import Question, Told, matters, told
from kb.check.beside import Catalogue, Shelves, each
from kb.check.report.coverage import Coverage
from kb.check.report.proposals import LARGE, proposals, with_places_for
from kb.evidence import addresses
from kb.terms import Catch, Drill, FaultId, LiftId, Load, Speed, Stage

__all__ = ["MOST_TRIED", "Gap", "gaps"]

MOST_TRIED = 150
"""Causes tried at most, the most promising first."""

_Spot = tuple[LiftId, FaultId, str]


class Gap(NamedTuple):
    """A drill that isn't there and what it is worth.

    `reach` is None for preparation. It `opens` the question with these kits, had it no chain there; `joins` as many
    answers that needed more than one sitting; `saves` is what the other answers cost less (300 a notch, 1 a second).
    `acting` drills address that cause now. It works on `works_on`: the fault and cause, or the earlier ones that
    the cause is.
    """

    lift: LiftId
    fault: FaultId
    cause: str
    works_on: tuple[FaultId, str]
    stage: Stage
    reach: tuple[str, str] | None
    speed: Speed
    load: Load
    catch: Catch
    opens: tuple[str, ...]
    joins: int
    saves: int
    acting: int


def gaps(catalogue: Catalogue, answers: Iterable[Told], coverage: Sequence[Coverage]) -> tuple[Gap, ...]:
    """The drills that would help, most first: by what they open, join and save."""
    thin = {(each.lift, thin.fault, thin.cause): len(thin.drills) for each in coverage for thin in each.thin}
    kits = tuple(dict.fromkeys(answer.question.kit for answer in answers))
    ranked = _ranked(answers, thin)
    tried = each(catalogue, _best, [(spot, kits) for spot in ranked[:MOST_TRIED]])
    return tuple(sorted((gap for gap in tried if gap is not None), key=_rank))


def _ranked(answers: Iterable[Told], thin: dict[_Spot, int]) -> list[_Spot]:
    """Where a drill may help: no chain with some kit, then few drills, then the largest step."""
    unsolved: dict[_Spot, int] = {}
    largest: dict[_Spot, int] = {}
    for answer in answers:
        asked = answer.question
        spot = asked.lift, asked.fault, asked.cause
        unsolved[spot] = unsolved.get(spot, 0) + (not answer.drills)
        largest[spot] = max(largest.get(spot, 0), *answer.steps, 0)
    spots = [spot for spot in unsolved if unsolved[spot] or spot in thin or largest[spot] >= LARGE]
    return sorted(spots, key=lambda spot: (-unsolved[spot], thin.get(spot, 2), -largest[spot], spot))


def _best(shelves: Shelves, item: tuple[_Spot, tuple[str, ...]]) -> Gap | None:
    """The proposal worth most for one cause; None if none helps."""
    (lift, fault, cause), kits = item
    asked = [(one, matter) for one, matter in matters({lift: shelves[lift]}, fault, kits) if one.cause == cause]
    before = {question: told(question, matter) for question, matter in asked}
    drills: list[Drill] = []
    for _, matter in asked:
        drills += (drill for drill in proposals(matter, _route(matter)) if drill not in drills)
    shelf = with_places_for(shelves[lift], drills)
    matter = asked[0][1]
    acting = sum(addresses(each, matter.worked, matter.worked_cause, each.load[1]) for each in shelf.drills.values())
    found = [_worth(shelf, matter, drill, before, acting) for drill in drills]
    best = min(found, key=_rank, default=None)
    return best if best is not None and (best.opens or best.joins or best.saves > 0) else None


def _rank(gap: Gap) -> tuple[int, int, int, str, str, str]:
    return -len(gap.opens), -gap.joins, -gap.saves, gap.lift, gap.fault, gap.cause


def _route(matter: Matter) -> Route | None:
    try:
        return solve(matter)[0]
    except NoChain:
        return None


def _worth(shelf: Shelf, matter: Matter, drill: Drill, before: dict[Question, Told], acting: int) -> Gap:
    """What one drill more does for the questions in `before`."""
    there = with_drills(shelf, {**shelf.drills, drill.id: drill})
    opens: list[str] = []
    joins = saves = 0
    for question, was in before.items():
        asked = ChainQuestion(fault=question.fault, cause=question.cause, have=shelf.kits[question.kit])
        now = told(question, matter_of(there, asked))
        if not was.drills:
            opens += [question.kit] if now.drills else []
        elif not now.drills:
            saves -= was.cost
        else:
            joins += was.sittings > 1 >= now.sittings
            saves += was.cost - now.cost
    return Gap(
        lift=shelf.lift.id,
        fault=matter.fault.id,
        cause=matter.cause.id,
        works_on=(matter.worked.id, matter.worked_cause.id),
        stage=drill.stage,
        reach=drill.reach.get(shelf.lift.id),
        speed=drill.speed,
        load=drill.load[1],
        catch=drill.catch,
        opens=tuple(opens),
        joins=joins,
        saves=saves,
        acting=acting,
    )
