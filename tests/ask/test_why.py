"""An answer taken apart."""

import pytest
from shipped import questions

from kb.ask.chain import chain
from kb.ask.choices import why_not
from kb.ask.matter import matter_of
from kb.ask.why import why

pytestmark = pytest.mark.no_cover


def some(shelves, every: int):
    for n, (shelf, question) in enumerate(questions(shelves, ("hall",))):
        if n % every == 0 and why_not(matter_of(shelf, question)) is None:
            yield shelf, question


def test_the_parts_are_the_cost(shelves) -> None:
    """Steps, seconds and strays sum to the whole, and strays come in sixes of a hundred."""
    for shelf, question in some(shelves, 15):
        answer = chain(shelf, question)
        reasons = why(answer.matter, answer.routes[0])
        assert reasons.steps + reasons.seconds + reasons.strays == answer.routes[0].cost
        assert reasons.strays % 600 == 0


def test_what_was_left_out_has_a_reason(shelves) -> None:
    """Every drill for the cause is in the chain or named with why not; no taking in is cheaper."""
    for shelf, question in some(shelves, 40):
        answer = chain(shelf, question)
        used = {entry.drill.id for entry in answer.routes[0].entries}
        reasons = why(answer.matter, answer.routes[0])
        left = {out.drill.id for out in reasons.left_out}
        assert not left & used
        for drill in shelf.drills.values():
            if drill.stage < 5 and answer.matter.addresses(drill, drill.load[1]):
                assert drill.id in left | used
        assert all(out.reason for out in reasons.left_out)


def test_the_other_causes_change_it_as_said(shelves) -> None:
    """Adding and dropping what is said gives the other cause's drills."""
    for shelf, question in some(shelves, 60):
        answer = chain(shelf, question)
        used = {entry.drill.id for entry in answer.routes[0].entries}
        for other in why(answer.matter, answer.routes[0]).other_causes:
            if other.none:
                continue
            theirs = chain(shelf, question._replace(cause=other.cause.id)).routes[0]
            assert (used | set(other.adds)) - set(other.drops) == {entry.drill.id for entry in theirs.entries}
