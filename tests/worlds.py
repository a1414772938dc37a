"""A small world of the tests as the shelf that the program answers from."""

from reading import Entry, World

from kb.ask import shelf as shelves
from kb.ask.chain import NoChain, chain
from kb.ask.question import ChainQuestion
from kb.ask.route import Route
from kb.ask.shelf import Shelf, Steps, profile_key
from kb.dials import serves, spans
from kb.make.steps import profiles, step_rows

__all__ = ["entries_of", "route_to", "shelf_of"]


def shelf_of(world: World) -> Shelf:
    """The lift's drills and faults, all equipment, one kit of everything, and the steps worked out."""
    drills = {i: drill for i, drill in world.drills.items() if serves(drill, world.lift)}
    found = profiles(world.lift, drills, world.items)
    sizes, least = step_rows(found, spans(world.lift))
    return shelves.shelf_of(
        lift=world.lift,
        drills=drills,
        faults=world.faults,
        items=world.items,
        kits={"full": frozenset(world.items)},
        steps=Steps({profile_key(dials): n for n, dials in enumerate(found)}, sizes, least),
    )


def route_to(world: World, question: ChainQuestion) -> Route | None:
    """The program's first route; None where it says that there is no chain."""
    try:
        return chain(shelf_of(world), question).routes[0]
    except NoChain:
        return None


def entries_of(route: Route) -> list[Entry]:
    """A route as the judge reads it."""
    return [(entry.drill.id, entry.load) for entry in route.entries]
