"""Why a chain is as it is: its cost taken apart, what was left out and why, what other causes change."""

from typing import NamedTuple

from kb.ask.choices import choices_of
from kb.ask.field import STEP_WEIGHT
from kb.ask.instead import Instead, instead
from kb.ask.matter import Matter
from kb.ask.route import Route
from kb.ask.search import BUDGET, Limits, search
from kb.terms import Cause, Drill, DrillId, Stage

__all__ = ["LeftOut", "OtherCause", "Why", "why"]


class LeftOut(NamedTuple):
    """A drill for the cause that the chain doesn't use, and why not."""

    drill: Drill
    reason: str


class OtherCause(NamedTuple):
    """Another cause, and what its chain adds to or drops from this one; `none` says why it has none."""

    cause: Cause
    adds: tuple[DrillId, ...]
    drops: tuple[DrillId, ...]
    none: str = ""


class Why(NamedTuple):
    """The cost, s of a lifter's time: steps, the entries' own time and strays, which sum to the whole."""

    steps: int
    seconds: int
    strays: int
    left_out: tuple[LeftOut, ...]
    other_causes: tuple[OtherCause, ...]


def why(matter: Matter, route: Route) -> Why:
    """Take a route of a question apart."""
    steps = STEP_WEIGHT * sum(entry.step or 0 for entry in route.entries)
    return Why(
        steps=steps,
        seconds=route.seconds,
        strays=route.cost - steps - route.seconds,
        left_out=_left_out(matter, route),
        other_causes=tuple(_other(route, other) for other in instead(matter)),
    )


def _left_out(matter: Matter, route: Route) -> tuple[LeftOut, ...]:
    used = {entry.drill.id for entry in route.entries}
    found = []
    for drill in matter.shelf.drills.values():
        if drill.id in used or drill.stage is Stage.FINISH or not matter.addresses(drill, drill.load[1]):
            continue
        found.append(LeftOut(drill, _reason(matter, route, drill)))
    return tuple(found)


def _reason(matter: Matter, route: Route, drill: Drill) -> str:
    if drill.id not in matter.fits:
        return "the kit has not what it needs"
    if drill.id not in matter.doable:
        return "what must come before it can't be done here"
    if not matter.addresses(drill, min(drill.load[1], matter.fits[drill.id].load, matter.limit)):
        return f"works on this cause only above {matter.limit.word} load"
    detour = _cheapest_with(matter, drill)
    if detour is None:
        return "no order of drills takes it in"
    return f"taking it in costs {max(0, detour - route.cost)} more than leaving it out"


def _cheapest_with(matter: Matter, drill: Drill) -> int | None:
    """The least cost of a chain that takes in one more drill, prerequisites of the lift apart."""
    choices = choices_of(matter)
    wanted = tuple(n for n, (each, _) in enumerate(choices.nodes) if each.id == drill.id)
    if not wanted:
        return None
    field = choices.field
    bit = 1 << max((gains.bit_length() for gains in field.gains), default=0)
    bits = [gains | bit if n in wanted else gains for n, gains in enumerate(field.gains)]
    must = {**choices.must, bit: wanted}
    found = search(field._replace(gains=bits), Limits(), must, budget=BUDGET // 4)
    return found.cost if found else None


def _other(route: Route, other: Instead) -> OtherCause:
    if other.chain is None:
        return OtherCause(other.cause, (), (), other.none)
    used = [entry.drill.id for entry in route.entries]
    theirs = [entry.drill.id for entry in other.chain.routes[0].entries]
    return OtherCause(
        other.cause,
        tuple(dict.fromkeys(each for each in theirs if each not in used)),
        tuple(dict.fromkeys(each for each in used if each not in theirs)),
    )
