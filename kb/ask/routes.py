"""Other ways to the same lift: the next cheapest routes that share at most half their drills."""

from kb.ask.choices import Choices
from kb.ask.matter import Matter
from kb.ask.question import MOST_WORK
from kb.ask.route import Route, route_of
from kb.ask.search import BUDGET, Found, Limits, search
from kb.terms import DrillId, Stage

__all__ = ["others"]

SURCHARGES = (300, 900, 2700, 8100)
"""Added to drills already used, s, more each time, until half of a route is new."""


def _own(route: Route, lift_drill: DrillId) -> set[DrillId]:
    """A route's drills, the lift's and preparation aside."""
    return {
        entry.drill.id
        for entry in route.entries
        if entry.drill.stage is not Stage.PREPARE and entry.drill.id != lift_drill
    }


def others(matter: Matter, choices: Choices, best: Route) -> tuple[Route, ...]:
    """Further routes, not proved next best: the field is searched again with used drills made dearer."""
    question, lift_drill = matter.question, matter.shelf.lift.drill
    limits = Limits(entries=question.at_most, work=MOST_WORK, seconds=question.seconds)
    routes = [best]
    while len(routes) < question.routes:
        used = [_own(route, lift_drill) for route in routes]
        route = next(
            (
                candidate
                for surcharge in SURCHARGES
                if (candidate := _dearer(matter, choices, limits, set[DrillId]().union(*used), surcharge))
                and all(
                    2 * len(_own(candidate, lift_drill) & earlier) <= len(_own(candidate, lift_drill))
                    for earlier in used
                )
                and _own(candidate, lift_drill)
            ),
            None,
        )
        if route is None:
            break
        routes.append(route)
    return tuple(sorted(routes[1:], key=lambda route: route.cost))


def _dearer(matter: Matter, choices: Choices, limits: Limits, used: set[DrillId], surcharge: int) -> Route | None:
    extra = [surcharge * (drill.id in used) for drill, _ in choices.nodes]
    enter = [cost + more for cost, more in zip(choices.field.enter, extra, strict=True)]
    found = search(choices.field._replace(enter=enter), limits, choices.must, budget=BUDGET)
    if found is None:
        return None
    cost = found.cost - sum(extra[n] for n in found.nodes)
    return route_of(matter, choices, Found(nodes=found.nodes, cost=cost, bound=cost), proved=False)
