"""When no chain exists: what can be rehearsed, and the smallest thing that opens one."""

import pytest
from shipped import questions

from kb.ask.chain import NoChain, chain
from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.rehearse import rehearse
from kb.terms import FaultId, ItemId, LiftId

pytestmark = pytest.mark.no_cover


def without_chain(shelves, kit: str):
    for shelf, question in questions(shelves, (kit,)):
        try:
            chain(shelf, question)
        except NoChain:
            yield shelf, question


def test_what_would_open_a_chain_does(shelves) -> None:
    """Asked again with the item, or with the prerequisite held, there is a chain."""
    tried = 0
    for n, (shelf, question) in enumerate(without_chain(shelves, "stick")):
        if n % 6:
            continue
        for opener in rehearse(matter_of(shelf, question)).would_open:
            more = question._replace(
                have=question.have | set(opener.items),
                holds=question.holds | ({opener.prerequisite} if opener.prerequisite else set()),
            )
            assert chain(shelf, more).routes
            tried += 1
    assert tried > 0


@pytest.mark.parametrize("share", [5, pytest.param(1, marks=pytest.mark.exhaustive)])
def test_what_is_rehearsed_can_be_done_with_the_kit(shelves, share: int) -> None:
    """Preparation first, then by stage; nothing that the kit or the doubts forbid."""
    for shelf, question in list(without_chain(shelves, "stick"))[::share]:
        matter = matter_of(shelf, question)
        found = rehearse(matter).drills
        assert {drill.id for drill in found} <= matter.doable
        assert [drill.stage for drill in found] == sorted(drill.stage for drill in found)


@pytest.mark.parametrize("have", [set(), {"wall"}])
def test_an_empty_room_has_no_snatch(shelves, have: set[str]) -> None:
    """Said in a sentence; a stick, or the room for one, is what is missing."""
    shelf = shelves[LiftId("snatch")]
    question = ChainQuestion(fault=FaultId("soft-elbows"), have=frozenset(map(ItemId, have)))
    with pytest.raises(NoChain, match="can't be done with this kit"):
        chain(shelf, question)
    opened = {item for opener in rehearse(matter_of(shelf, question)).would_open for item in opener.items}
    assert opened & {"stick", "broom", "headroom"}
