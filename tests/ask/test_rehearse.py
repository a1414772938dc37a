"""When no chain exists: what can be rehearsed, and the smallest thing that opens one."""

import pytest
from shipped import questions

from kb.ask.chain import NoChain, chain
from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.rehearse import MOST_REHEARSED, rehearsable, rehearse
from kb.ask.session.path_course import named_course
from kb.ask.session.sessions import has_room, named_session
from kb.errors import NoAnswer
from kb.terms import FaultId, ItemId, LiftId, Stage

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
    """Preparation first, what others build on before them, nothing that the kit or the doubts forbid."""
    for shelf, question in list(without_chain(shelves, "stick"))[::share]:
        matter = matter_of(shelf, question)
        rehearsal = rehearse(matter)
        found = rehearsal.drills
        assert {drill.id for drill in found} <= matter.doable
        assert found == rehearsable(matter)
        ids = [drill.id for drill in found]
        assert len(ids) == len(set(ids))
        for at, drill in enumerate(found):
            for group in drill.groups:
                assert not set(group) & set(ids) or set(group) & set(ids[:at]), drill.id
        free = [drill for drill in found if not any(set(group) & set(ids) for group in drill.groups)]
        kinds = [drill.stage is not Stage.PREPARE for drill in free]
        assert kinds == sorted(kinds)
        asked = [(entry.dials.speed, entry.dials.catch, entry.load) for entry in rehearsal.entries]
        loose = [
            of
            for of, entry in zip(asked, rehearsal.entries, strict=True)
            if entry.drill in free and entry.drill.stage is not Stage.PREPARE
        ]
        assert loose == sorted(loose)
        assert [entry.drill for entry in rehearsal.entries] == list(found[:MOST_REHEARSED])
        assert all(entry.work and entry.load <= matter.limit for entry in rehearsal.entries)
        assert rehearsal.session in ((), tuple(entry.drill.id for entry in rehearsal.entries))


@pytest.mark.parametrize("have", [set(), {"wall"}])
def test_an_empty_room_has_no_snatch(shelves, have: set[str]) -> None:
    """Said in a sentence; a stick, or the room for one, is what is missing."""
    shelf = shelves[LiftId("snatch")]
    question = ChainQuestion(fault=FaultId("soft-elbows"), have=frozenset(map(ItemId, have)))
    with pytest.raises(NoChain, match="can't be done with this kit"):
        chain(shelf, question)
    opened = {item for opener in rehearse(matter_of(shelf, question)).would_open for item in opener.items}
    assert opened & {"stick", "broom", "headroom"}


def test_a_session_is_promised_where_there_is_one(shelves) -> None:
    """Told by the least alone; the whole choice is made here, for every sixth question and a few lengths."""
    told = {True: 0, False: 0}
    for n, (shelf, question) in enumerate(without_chain(shelves, "stick")):
        names = tuple(drill.id for drill in rehearsable(matter_of(shelf, question))[:MOST_REHEARSED])
        if n % 6 or not names:
            continue
        try:
            course = named_course(shelf, names, question.have)
        except NoAnswer:
            continue
        for minutes in (5, 12, 20, 30):
            try:
                named_session(course, minutes)
                there = True
            except NoAnswer:
                there = False
            assert has_room(course, minutes) == there, (question, minutes)
            told[there] += 1
    assert min(told.values()) > 3
