"""A chain: from an observed fault, for one cause, to the full lift, with what is in the room."""

from typing import NamedTuple

from kb.ask.alone import strengthening
from kb.ask.choices import Choices, choices_of, finish_of, why_not
from kb.ask.matter import Matter, matter_of
from kb.ask.question import MOST_WORK, ChainQuestion
from kb.ask.route import Entry, Route, route_of
from kb.ask.routes import others
from kb.ask.search import BUDGET, Found, Limits, search
from kb.ask.shelf import Shelf
from kb.ask.sittings import cut
from kb.errors import NoAnswer
from kb.terms import Drill

__all__ = ["Chain", "NoChain", "chain", "solve"]


class NoChain(NoAnswer):
    """No chain exists with this kit, this time or what is held; the text says which."""


class Chain(NamedTuple):
    """The answer: what was understood, the routes, best first, and what to strengthen afterwards.

    `strengthen` are the first of `finish` that can be begun now, as they are to be done.
    """

    matter: Matter
    routes: tuple[Route, ...]
    finish: tuple[Drill, ...]
    strengthen: tuple[Entry, ...] = ()


def solve(matter: Matter) -> tuple[Route, Choices]:
    """The best route within the question's limits, cut into sittings if it doesn't fit them.

    Raises NoChain when the kit or what is held allows none, or when one sitting can't hold two entries.
    """
    against = why_not(matter)
    if against:
        raise NoChain(against)
    question = matter.question
    choices = choices_of(matter)
    free = search(choices.field, Limits(), choices.must, budget=BUDGET)
    if free is None:
        raise NoChain("no order of the drills this kit allows leads to the lift")
    limits = Limits(entries=question.at_most, work=MOST_WORK, seconds=question.seconds)
    if _within(choices, free, limits):
        return route_of(matter, choices, free), choices
    fitting = search(choices.field, limits, choices.must, budget=BUDGET)
    if fitting is not None:
        return route_of(matter, choices, fitting), choices
    try:
        return cut(route_of(matter, choices, free), limits, matter.shelf.lift.drill), choices
    except NoAnswer as short:
        raise NoChain(str(short)) from None


def _within(choices: Choices, found: Found, limits: Limits) -> bool:
    field = choices.field
    work = sum(field.work[n] for n in found.nodes)
    seconds = sum(field.seconds[n] for n in found.nodes)
    return (
        (limits.entries is None or len(found.nodes) <= limits.entries)
        and (limits.work is None or work <= limits.work)
        and (limits.seconds is None or seconds <= limits.seconds)
    )


def chain(shelf: Shelf, question: ChainQuestion) -> Chain:
    """Answer a question for a chain.

    Raises BadInput for an unknown fault or cause and NoChain, with the reason, when there is none.
    """
    matter = matter_of(shelf, question)
    route, choices = solve(matter)
    more = others(matter, choices, route) if question.routes > 1 else ()
    finish = finish_of(matter)
    done = frozenset(entry.drill.id for entry in route.entries)
    return Chain(matter, (route, *more), finish, strengthening(matter, finish, done))
