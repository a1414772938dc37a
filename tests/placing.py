"""Every way a placement can go, and what comes of it for lifters who err: exactly, and by lifters drawn at random."""

from collections.abc import Mapping
from random import Random
from typing import NamedTuple

from kb.ask.ability.blim import Rates
from kb.ask.ability.placement import Answer, Check, place
from kb.ask.ability.structure import Structure
from kb.terms import DrillId, Lift

__all__ = ["Outcome", "Tree", "exactly", "grown", "simulated"]


class Tree(NamedTuple):
    """What is asked after some answers (an item, or None at an end), the likeliest state there, what yes and no give.

    `states` are all there are.
    """

    item: int | None
    state: int
    yes: "Tree | None"
    no: "Tree | None"
    states: tuple[int, ...]


class Outcome(NamedTuple):
    """Over lifters of every state alike: the median number of checks, shares placed right and at most one drill off."""

    median: float
    mean: float
    right: float
    adjacent: float


def grown(
    lift: Lift,
    structure: Structure,
    checks: Mapping[DrillId, Check],
    *,
    rates: Rates | None = None,
    answers: tuple[Answer, ...] = (),
) -> Tree:
    """Every way a placement can go from some answers on."""
    here = place(lift, structure, checks, answers, rates=rates)
    if here.next is None:
        return Tree(None, here.state, None, None, here.structure.states)
    drill = here.next.drill.id
    yes, no = (
        grown(lift, structure, checks, rates=rates, answers=(*answers, Answer(drill, says))) for says in ("yes", "no")
    )
    return Tree(here.structure.items.index(drill), here.state, yes, no, here.structure.states)


def exactly(tree: Tree, error: float) -> Outcome:
    """What comes out where every check errs in `error` of cases, worked out over all ways; no chance in it."""
    counts: dict[int, float] = {}
    right = adjacent = 0.0
    for true in tree.states:
        waiting = [(tree, 0, 1 / len(tree.states))]
        while waiting:
            here, asked, share = waiting.pop()
            if here.item is None or here.yes is None or here.no is None:
                counts[asked] = counts.get(asked, 0) + share
                off = (here.state ^ true).bit_count()
                right += share * (off == 0)
                adjacent += share * (off <= 1)
                continue
            passes = 1 - error if true >> here.item & 1 else error
            waiting += [(here.yes, asked + 1, share * passes), (here.no, asked + 1, share * (1 - passes))]
    mean = sum(asked * share for asked, share in counts.items())
    return Outcome(_median(counts), mean, right, adjacent)


def _median(counts: Mapping[int, float]) -> float:
    total = 0.0
    for asked in sorted(counts):
        total += counts[asked]
        if total >= 0.5:
            return asked
    raise AssertionError(counts)


def simulated(tree: Tree, error: float, lifters: int, seed: int) -> Outcome:
    """The same by so many lifters drawn at random, each with a state of its own."""
    random = Random(seed)
    asked: list[int] = []
    right = adjacent = 0
    for _ in range(lifters):
        true, here, count = random.choice(tree.states), tree, 0
        while here.item is not None and here.yes is not None and here.no is not None:
            passes = bool(true >> here.item & 1) != (random.random() < error)
            here, count = here.yes if passes else here.no, count + 1
        asked.append(count)
        off = (here.state ^ true).bit_count()
        right += off == 0
        adjacent += off <= 1
    return Outcome(sorted(asked)[(lifters - 1) // 2], sum(asked) / lifters, right / lifters, adjacent / lifters)
