"""What each drill is good for: by hand in a small library, and by asking everything anew in random ones."""

from dataclasses import replace
from pathlib import Path

from hypothesis import assume, given, settings
from reading import World
from report_small import FAULT, SNATCH, the_library
from strategies import PathQuestion, path_questions, questions
from worlds import shelf_of

from kb.ask.question import ChainQuestion
from kb.ask.shelf import with_drills
from kb.check.asked import Question, matters, path_told, told
from kb.check.beside import opened
from kb.check.report.contribution import Asked, Contribution, Use, _swaps, asked_of, contributions
from kb.check.report.kept import Kept, kept_for
from kb.check.report.without import Loss, chain_losses, matter_without, path_loss
from kb.make.library import Library, load
from kb.terms import DrillId, FaultId, ItemId

KITS = ("stick", "hall")
DATA = Path(__file__).parents[2] / "data"
WORLD_FAULT = FaultId("fault")


def _asked(library: Library) -> Asked:
    with opened(library) as catalogue:
        return asked_of(catalogue, KITS)


def _by_drill(library: Library) -> dict[str, Contribution]:
    return {each.drill: each for each in contributions(library, _asked(library))}


def test_chains_of_the_small_library() -> None:
    """`piece` saves the hall a step of 11 for one of 7; the stick has no other drill than `slow-piece`."""
    found = _by_drill(the_library())
    # 300 a notch, and all take the same time
    assert found["piece"].chains == Use(holds=1, lost=0, dearer=1, more=300 * (11 - 7))
    assert found["slow-piece"].chains == Use(holds=1, lost=1)
    assert found["stand-tall"].chains == found["look-at-hands"].chains == Use()
    # of four questions two have no chain: no drill is for the cause `no-idea`
    assert found["full-snatch"].chains == Use(holds=2, lost=2)


def test_paths_of_the_small_library() -> None:
    """Nothing comes before the lift, so without any other drill its path is as before."""
    found = _by_drill(the_library())
    assert found["full-snatch"].paths == Use(holds=2, lost=2)
    assert all(each.paths == Use() for drill, each in found.items() if drill != "full-snatch")


def test_swaps_of_the_small_library() -> None:
    """A stick does for three drills at light load: `slow-piece` is nearest to `piece`, and its only easier version."""
    asked = _asked(the_library())
    for_piece = [(kit, near, loss) for drill, kit, near, loss in asked.swaps if drill == "piece"]
    assert [kit for kit, _, _ in for_piece] == ["stick", "stick"]
    (_, nearest, first), (_, easier, second) = for_piece
    assert nearest[0] == first.drill == "slow-piece"
    assert nearest[1] == "full-snatch"
    assert (first.lost, second.lost) == (False, True)
    assert first.more > 0
    assert easier == ("slow-piece",)


def test_what_counts_for_nothing_is_named_with_what_it_is_kept_for() -> None:
    """`stand-tall` is kept for nothing, `look-at-hands` for a quick check; all others count."""
    found = _by_drill(the_library())
    assert {drill for drill, each in found.items() if not each.counts} == {"stand-tall", "look-at-hands"}
    assert found["stand-tall"].kept == ()
    assert found["look-at-hands"].kept == (Kept("a quick check for", (FAULT,)),)
    assert found["slow-piece"].kept == (
        Kept("an easier version of", ("piece",)),
        Kept("rehearsed where there is no chain for", (f"{FAULT}/no-idea",)),
    )
    assert found["full-snatch"].kept == (Kept("the lift itself", (SNATCH,)),)


def test_reasons_to_keep_a_drill_on_disk() -> None:
    """Each sort of reason, read off the small library's files."""
    kept = kept_for(load(DATA / "small"))
    whys = {each.why for reasons in kept.values() for each in reasons}
    assert {"the lift itself", "comes before", "an easier version of", "opens for", "strengthens for"} <= whys
    assert {"a quick check for", "a checkpoint of", "a part at weight in plans for"} <= whys


def test_a_part_of_a_complex_and_what_isnt_there() -> None:
    """A complex keeps its parts; a name that no drill has keeps nothing."""
    library = the_library()
    lift = library.drills[DrillId("full-snatch")]._replace(
        made_of=(DrillId("stand-tall"),),
        prerequisites=((DrillId("no-such"),), (DrillId("piece"), DrillId("slow-piece"))),
    )
    kept = kept_for(replace(library, drills={**library.drills, lift.id: lift}))
    assert kept[DrillId("stand-tall")] == (Kept("a part of", (lift.id,)),)
    assert kept[DrillId("piece")] == (Kept("one of those that may come before", (lift.id,)),)
    assert set(kept) == set(library.drills)


def test_no_drill_is_near() -> None:
    """Where nothing alike can be done with a kit, there is no swap to miss."""
    library = the_library()
    alone = replace(library, drills={"piece": library.drills[DrillId("piece")]._replace(regressions=())})
    assert list(_swaps(alone, ("stick",))) == []


@settings(max_examples=40, deadline=None)
@given(questions(most=9))
def test_only_drills_of_the_answer_count(drawn: tuple[World, ChainQuestion]) -> None:
    """A drill that isn't named as a loss can be forbidden and the answer is no worse; each loss is what it says."""
    world, question = drawn
    shelf = shelf_of(world)._replace(kits={"some": question.have, "full": frozenset(world.items)})
    for asked, matter in matters({shelf.lift.id: shelf}, question.fault, ("some", "full")):
        answer = told(asked, matter)
        if not answer.drills:
            assert chain_losses(matter, answer) == ()
            continue
        losses = {loss.drill: loss for loss in chain_losses(matter, answer)}
        for drill in shelf.drills:
            if drill == shelf.lift.drill:
                continue
            after = told(asked, matter_without(matter, drill))
            if drill not in losses:
                assert after.weight <= answer.weight
                assert after.drills
            elif losses[drill].lost:
                assert not after.drills
            else:
                assert drill not in after.ids
                assert after.weight > answer.weight
                assert losses[drill].more == after.cost - answer.cost


def _weights(world: World, have: frozenset[ItemId]) -> dict[Question, tuple[bool, bool, bool, int]]:
    """Whether each question about the fault lacks a chain, and what it weighs, with everything and with some of it."""
    shelf = shelf_of(world)._replace(kits={"some": have, "full": frozenset(world.items)})
    found = {}
    for asked, matter in matters({shelf.lift.id: shelf}, WORLD_FAULT, ("some", "full")):
        answer = told(asked, matter)
        found[asked] = (not answer.drills, *answer.weight)
    return found


@settings(max_examples=40, deadline=None)
@given(questions(most=9))
def test_what_counts_for_nothing_can_be_taken_away(drawn: tuple[World, ChainQuestion]) -> None:
    """Taken out of the library, a drill that no chain misses and nothing builds on leaves no chain worse.

    One may even be better: dearer, but with the lift tried at a lower load first, which a cheaper list had left out.
    """
    world, question = drawn
    shelf = shelf_of(world)._replace(kits={"some": question.have, "full": frozenset(world.items)})
    named = {member for drill in world.drills.values() for group in drill.groups for member in group}
    missed = {
        loss.drill
        for asked, matter in matters({shelf.lift.id: shelf}, WORLD_FAULT, ("some", "full"))
        for loss in chain_losses(matter, told(asked, matter))
    }
    before = _weights(world, question.have)
    for drill in [each for each in shelf.drills if each not in missed | named | {shelf.lift.drill}]:
        fewer = replace(world, drills={d: each for d, each in world.drills.items() if d != drill})
        after = _weights(fewer, question.have)
        assert all(after[asked] <= before[asked] for asked in before)


@settings(max_examples=40, deadline=None)
@given(path_questions(most=9))
def test_a_path_misses_only_its_own_drills(drawn: tuple[World, PathQuestion]) -> None:
    """Any other drill can go and the path costs the same; one of its own is lost or dearer, or another does as well."""
    world, question = drawn
    shelf = shelf_of(world)._replace(kits={"some": question.have})
    answer = path_told(shelf, "some")
    assume(answer.drills)
    for drill in shelf.drills:
        if drill == shelf.lift.drill:
            continue
        fewer = with_drills(shelf, {d: e for d, e in shelf.drills.items() if d != drill})
        after, loss = path_told(fewer, "some"), path_loss(shelf, answer, drill)
        assert (loss is not None and loss.lost) == (not after.drills)
        if after.drills:
            assert after.cost - answer.cost == (loss.more if loss else 0)
        if drill not in answer.ids:
            assert loss is None


def test_an_unproved_path_tells_only_whether_it_is_lost() -> None:
    """Its cost isn't the least, so that another costs more says nothing."""
    with opened(the_library()) as catalogue:
        shelf = catalogue.shelves[SNATCH]
    answer = path_told(shelf, "hall")
    unproved = answer._replace(proved=False, cost=answer.cost - 1)
    assert path_loss(shelf, unproved, DrillId("piece")) is None
    assert path_loss(shelf, answer._replace(cost=answer.cost - 1), DrillId("piece")) == Loss(
        DrillId("piece"), lost=False, more=1
    )
