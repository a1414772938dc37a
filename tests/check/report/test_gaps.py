"""What a new drill would have to be: by hand in the small library, and what is promised is what happens."""

from dataclasses import replace

from report_small import FAULT, SNATCH, a_drill, the_library

from kb.check.asked import matters, told
from kb.check.beside import opened
from kb.check.report.coverage import coverages
from kb.check.report.gaps import Gap, gaps
from kb.check.report.proposals import proposals, with_places_for
from kb.make.library import Library
from kb.terms import Addressed, Catch, Cause, Load, Speed, Stage

KITS = ("stick", "hall")


def _gaps(library: Library) -> tuple[Gap, ...]:
    with opened(library) as catalogue:
        answers = [told(*asked) for asked in matters(catalogue.shelves, FAULT, KITS)]
        return gaps(catalogue, answers, coverages(library))


def test_a_cause_without_a_drill_comes_first() -> None:
    """A piece where the fault is opens the questions with either kit; a step of 11 for `swings` comes after."""
    first, *others = _gaps(the_library())
    assert (first.lift, first.fault, first.cause, first.acting) == (SNATCH, FAULT, "no-idea", 0)
    assert first.opens == KITS
    assert (first.stage, first.reach) == (Stage.SEGMENT, ("start", "hip"))
    assert first.load is Load.STICK
    assert [each.cause for each in others] == ["swings"]


def test_half_way_up_a_large_step() -> None:
    """With a stick the one step is 11; one dial of it turned before saves the stick's answer at least a notch."""
    gap = _gaps(the_library())[-1]
    assert (gap.cause, gap.opens, gap.joins, gap.acting) == ("swings", (), 0, 2)
    assert gap.saves >= 300


def test_a_promise_is_kept() -> None:
    """With the drill that was proposed there, what was said to open is open, and the rest costs as much less."""
    library = the_library()
    for gap in _gaps(library):
        assert gap.reach is not None
        new = a_drill(
            "new-drill",
            *gap.reach,
            stage=gap.stage,
            speed=gap.speed,
            load=(Load.STICK, max(Load.STICK, gap.load)),
            catch=gap.catch,
            faults=(Addressed(*gap.works_on),),
        )
        more = replace(library, drills={**library.drills, new.id: new})
        before, after = ({}, {})
        for said, found in ((library, before), (more, after)):
            with opened(said) as catalogue:
                found |= {
                    asked: told(asked, matter)
                    for asked, matter in matters(catalogue.shelves, FAULT, KITS)
                    if asked.cause == gap.cause
                }
        opened_now = tuple(asked.kit for asked in before if not before[asked].drills and after[asked].drills)
        assert opened_now == gap.opens
        saved = sum(before[asked].cost - after[asked].cost for asked in before if before[asked].drills)
        assert saved == gap.saves


def test_mobility_is_given_preparation() -> None:
    """A joint that won't open asks for a drill that opens it, and for no other."""
    library = the_library()
    fault = library.faults[FAULT]
    stiff = replace(library, faults={FAULT: fault._replace(causes=(Cause("stiff", "mobility", "Won't bend."),))})
    (gap,) = _gaps(stiff)
    assert (gap.stage, gap.reach, gap.opens) == (Stage.PREPARE, None, KITS)


def test_nothing_opens_what_the_lift_doesnt_show() -> None:
    """With a stick a fault of weight can't be seen in the lift: no drill is proposed that would open it there."""
    library = the_library()
    fault = library.faults[FAULT]
    heavy = tuple(cause._replace(shows_at=cause.shows_at._replace(load=Load.LIGHT)) for cause in fault.causes)
    found = _gaps(replace(library, faults={FAULT: fault._replace(causes=heavy)}))
    assert all("stick" not in gap.opens for gap in found)
    assert any(gap.opens == ("hall",) for gap in found)


def test_proposals_stand_on_the_lift_and_their_steps_are_there() -> None:
    """Each is for the cause, within the timeline, no heavier than light, and every place of it has its steps."""
    with opened(the_library()) as catalogue:
        shelf = catalogue.shelves[SNATCH]
        (_, matter), *_ = matters(catalogue.shelves, FAULT, ("hall",))
    made = proposals(matter, None)
    assert made
    assert len(made) == len({str(drill) for drill in made})
    wider = with_places_for(shelf, made)
    assert len(wider.steps.sizes) > len(shelf.steps.sizes)
    for drill in made:
        assert drill.faults == (Addressed(FAULT, "swings"),)
        assert drill.load[1] <= Load.LIGHT
        first, last = drill.reach[SNATCH]
        assert first == last or drill.speed > Speed.HELD
        assert drill.speed <= Speed.FULL
        assert drill.catch <= Catch.FULL
