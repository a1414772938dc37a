"""The order of a rehearsal, and why there is one instead of a chain: by hand, on the small library."""

from small_answers import small_shelf

from kb.ask.choices import why_not
from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.rehearse import rehearsable
from kb.ask.shelf import with_drills
from kb.evidence import shown
from kb.terms import Catch, Drill, DrillId, FaultId, Load, ShowsAt, Speed, Stage


def test_what_must_come_first_goes_before_what_is_gentler() -> None:
    """By hand: preparation, then a hold, then a slow drill; but what a gentle one builds on goes before it."""
    shelf = small_shelf("clean")
    matter = matter_of(shelf, ChainQuestion(fault=FaultId("hips-rise-first"), have=shelf.kits["stick"]))
    known = next(drill for drill in rehearsable(matter) if drill.stage is not Stage.PREPARE)

    def like(name: str, **fields: object) -> Drill:
        return known._replace(
            **{"id": DrillId(name), "prerequisites": (), "made_of": (), "catch": Catch.NONE, **fields}
        )

    full, hold = like("a", speed=Speed.FULL), like("d", speed=Speed.HELD, prerequisites=((DrillId("e"),),))
    caught, needed = like("b", speed=Speed.SLOW, catch=Catch.POWER), like("e", speed=Speed.PAUSED)
    slow = like("c", speed=Speed.SLOW, prerequisites=((DrillId("elsewhere"),),))
    all_of_them = {drill.id: drill for drill in (full, caught, slow, hold, needed)}
    other = matter._replace(
        shelf=with_drills(shelf, {**shelf.drills, **all_of_them}),
        addressing=frozenset(all_of_them),
        doable=frozenset(all_of_them),
        fits={**matter.fits, **dict.fromkeys(all_of_them, matter.fits[known.id])},
    )
    assert [drill.id for drill in rehearsable(other)] == ["c", "b", "e", "d", "a"]


def test_any_of_groups_that_wait_for_each_other_still_have_an_order() -> None:
    """The first begins: what one of them could be built on instead isn't rehearsed."""
    shelf = small_shelf("clean")
    matter = matter_of(shelf, ChainQuestion(fault=FaultId("hips-rise-first"), have=shelf.kits["stick"]))
    known = next(drill for drill in rehearsable(matter) if drill.stage is not Stage.PREPARE)
    a = known._replace(id=DrillId("a"), prerequisites=((DrillId("b"), DrillId("x")),), made_of=())
    b = known._replace(id=DrillId("b"), prerequisites=((DrillId("a"), DrillId("y")),), made_of=())
    other = matter._replace(
        shelf=with_drills(shelf, {**shelf.drills, a.id: a, b.id: b}),
        addressing=frozenset({a.id, b.id}),
        doable=frozenset({a.id, b.id}),
        fits={**matter.fits, **dict.fromkeys((a.id, b.id), matter.fits[known.id])},
    )
    assert [drill.id for drill in rehearsable(other)] == ["a", "b"]


def test_a_lift_that_tests_nothing_is_said_to_prove_nothing() -> None:
    """By what it lacks: weight to show the fault, or else the whole lift."""
    shelf = small_shelf("clean")
    matter = matter_of(shelf, ChainQuestion(fault=FaultId("hips-rise-first"), have=shelf.kits["full"]))

    def why(least: Load, load: Load) -> str | None:
        fault = matter.fault._replace(shows_at=ShowsAt(load=least))
        where = shown(fault, matter.cause, shelf.lift)
        return why_not(matter._replace(fault=fault, load=load, where=where))

    gone = "doesn't test this fault: it could look gone and still be there"
    assert why(Load.LIGHT, Load.STICK) == f"at stick load the clean {gone} under a bar"
    assert why(Load.WORKING, Load.LIGHT) == f"at light load the clean {gone} under working weight"
    quick = matter.fault._replace(shows_at=ShowsAt(speed=Speed.FULL))
    full = matter._replace(fault=quick, where=shown(quick, matter.cause, shelf.lift))
    slow = {each: fitted._replace(speed=Speed.SLOW) for each, fitted in full.fits.items()}
    assert why_not(full._replace(fits=slow)) == f"with this gear the clean {gone} in the full lift"
