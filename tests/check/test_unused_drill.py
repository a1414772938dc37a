"""What saves a drill from being called unused: chains, what is offered after them, swaps and paths."""

from dataclasses import replace

from broken_cases import sound
from handmade import drill
from handmade import library as handmade

from kb.check.answers import Answers, answers
from kb.check.unused_drill import rule
from kb.make.library import Library
from kb.terms import DrillId, FaultId, Item, ItemId, LiftId, PositionId, Regression, Stage, Tell


def _unused(library: Library, asked: Answers | None = None) -> set[str]:
    told = {problem.file for problem in rule(library, asked or answers(library))}
    return {file.rpartition("/")[2].removesuffix(".md") for file in told}


def _with(library: Library, **said: object) -> Library:
    extra = drill("zz-extra", **said)  # type: ignore[arg-type]  # any field of a drill
    return replace(library, drills={**library.drills, extra.id: extra})


def test_a_chain_and_what_strengthens_after_it_save() -> None:
    """What a chain names is used, and so is a finish drill that is offered after one; neither needs a swap."""
    library = sound()
    asked = answers(library)
    named = {drill for each in asked.chains for drill in each.ids}
    offered = {drill for each in asked.chains for drill in each.finish}
    assert {"tall-clean", "half-kneel-knee-over-toe"} <= named
    assert "back-squat" in offered
    assert not _unused(library, asked)
    assert "half-kneel-knee-over-toe" in _unused(library, asked._replace(chains=()))


def test_a_tell_that_uses_it_saves() -> None:
    """A tell comes with the chain's answer, so the drill that it is done with is given."""
    library = _with(handmade(), reach={"clean": ("hip", "hip")}, stage=Stage.POSITION, bridge=False)
    hips = library.faults[FaultId("hips-rise")]
    telling = hips._replace(tells=(Tell(do="Hold it.", look="Level?", seconds=9, drill=DrillId("zz-extra")),))
    assert "zz-extra" in _unused(library)
    assert "zz-extra" not in _unused(replace(library, faults={**library.faults, hips.id: telling}))


def test_the_drill_of_a_lift_is_on_the_path_to_it() -> None:
    """Also of a lift of parts, whose path is not looked for, and of one without a fault."""
    # of two kinds of preparation that serve alike a path takes one
    assert _unused(handmade()) <= {"wrist-rock"}


def test_being_a_near_swap_saves() -> None:
    """Something that aims where another does is offered instead of it."""
    library = handmade()
    idle = {"reach": {"clean": ("receive", "receive")}, "stage": Stage.POSITION, "bridge": False}
    aim = {"target_position": {LiftId("clean"): PositionId("clean-receive")}}
    assert "zz-extra" in _unused(_with(library, **idle))
    assert "zz-extra" not in _unused(_with(library, **idle, **aim))


def test_being_an_easier_version_saves() -> None:
    """A swap names first what an entry calls easier."""
    library = _with(handmade(), reach={"clean": ("receive", "receive")}, stage=Stage.POSITION, bridge=False)
    harder = library.drills[DrillId("full-clean")]
    easier = harder._replace(regressions=(*harder.regressions, Regression(DrillId("zz-extra"), "one point alone")))
    assert "zz-extra" in _unused(library)
    assert "zz-extra" not in _unused(replace(library, drills={**library.drills, harder.id: easier}))


def test_being_on_a_path_saves() -> None:
    """What must come first on the way from nothing to the lift is used, though no fault names it."""
    library = _with(handmade(), reach={"clean": ("hip", "hip")}, stage=Stage.POSITION, bridge=False)
    lift = library.drills[DrillId("full-clean")]
    needing = lift._replace(prerequisites=(*lift.prerequisites, (DrillId("zz-extra"),)))
    needed = replace(library, drills={**library.drills, needing.id: needing})
    assert "zz-extra" not in _unused(needed, answers(needed)._replace(chains=()))
    assert "zz-extra" in _unused(library, answers(library)._replace(chains=()))


def test_a_kit_that_leads_nowhere_saves_nothing() -> None:
    """Where the lift itself can't be done there is no path, and that is no failure."""
    library = handmade()
    mat = Item(id=ItemId("mat"), name="Mat", kits=("floor",))
    library = replace(library, items={**library.items, mat.id: mat})
    extra = _with(library, lifts=("clean",), stage=Stage.PREPARE, opens=("thumb",), equipment=(mat.id,))
    assert "zz-extra" in _unused(extra)
