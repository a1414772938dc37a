"""Strengthening after a chain: which drills are told in full, in which order, at which load."""

from small_answers import small_chain

from kb.ask.alone import MOST_IN_FULL, strengthening
from kb.ask.choices import finish_of
from kb.ask.matter import Matter
from kb.ask.shelf import with_drills
from kb.terms import Addressed, Drill, DrillId, Load

FOUND = small_chain("hips-rise-first", cause="weak-legs-off-floor")
SQUAT = FOUND.finish[0]


def among(*drills: Drill) -> Matter:
    """The same question, with these strengthening drills instead of its own, done with the squat's gear."""
    matter = FOUND.matter
    drills_by_id = {each: drill for each, drill in matter.shelf.drills.items() if each != SQUAT.id}
    shelf = with_drills(matter.shelf, {**drills_by_id, **{drill.id: drill for drill in drills}})
    fits = {**matter.fits, **{drill.id: matter.fits[SQUAT.id] for drill in drills}}
    addressing = frozenset(drill.id for drill in drills)  # each names the fault, or this very cause of it
    return matter._replace(shelf=shelf, fits=fits, addressing=addressing)


def like(name: str, *, cause: str | None = None, needs: str | None = None) -> Drill:
    """A strengthening drill for the fault, for this cause of it or whatever the cause."""
    return SQUAT._replace(
        id=DrillId(name),
        faults=(Addressed(FOUND.matter.worked.id, cause),),
        prerequisites=((DrillId(needs),),) if needs else (),
    )


def test_what_names_the_cause_comes_before_what_names_the_fault() -> None:
    """Then by id; the first three are told in full, at full dose and the most that the gear allows."""
    own = FOUND.matter.worked_cause.id
    matter = among(like("a"), like("b"), like("c", cause=own), like("d", cause=own))
    finish = finish_of(matter)
    assert [drill.id for drill in finish] == ["c", "d", "a", "b"]
    told = strengthening(matter, finish, frozenset())
    assert [entry.drill.id for entry in told] == ["c", "d", "a"]
    assert len(told) == MOST_IN_FULL
    assert all(entry.work and entry.load is Load.WORKING and entry.step is None for entry in told)


def test_what_cannot_be_begun_yet_is_not_told_in_full() -> None:
    """What builds on a drill in doubt waits for it; where the chain does that drill now, it is no more than light."""
    doubted = min(FOUND.matter.doubt)
    matter = among(like("a", needs=doubted), like("b"))
    finish = finish_of(matter)
    assert [entry.drill.id for entry in strengthening(matter, finish, frozenset())] == ["b"]
    now = strengthening(matter, finish, frozenset({doubted}))
    assert [(entry.drill.id, entry.load) for entry in now] == [("a", Load.LIGHT), ("b", Load.WORKING)]


def test_the_answer_holds_both() -> None:
    """All by name, the first as they are to be done."""
    assert [entry.drill.id for entry in FOUND.strengthen] == [drill.id for drill in FOUND.finish]
    assert not small_chain("clean-bar-crashes").strengthen
