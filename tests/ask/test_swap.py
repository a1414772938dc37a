"""Instead of a drill: what the kit allows, on the shipped library."""

import pytest

from kb import kit
from kb.ask import read
from kb.ask.swap import swap
from kb.dials import reach_on
from kb.terms import Catch, DrillId, ItemId, Load, Speed, Stage

pytestmark = pytest.mark.no_cover


@pytest.fixture(scope="module")
def world(db):
    return {"drills": read.drills(db), "items": read.items(db), "lifts": read.lifts(db)}


@pytest.fixture(params=[pytest.param(3, id="a share"), pytest.param(1, id="all", marks=pytest.mark.exhaustive)])
def asked(request, world):
    """The drills that are asked about: every third, or all."""
    return list(world["drills"].values())[:: request.param]


def have(*items: str) -> frozenset[ItemId]:
    return frozenset(ItemId(item) for item in items)


def test_a_broom_for_a_bar_says_what_is_lost(world) -> None:
    """As it is, with a stand-in; no more than a stick's load."""
    found = swap(world["drills"][DrillId("hang-clean")], have("broom", "headroom"), **world)
    assert found.doable
    assert found.load is Load.STICK
    assert [(gear.item, gear.using) for gear in found.gear] == [("bar", "broom")]
    assert any("stick" in lost for lost in found.lost)


def test_loose_stands_are_no_rack_with_arms(world) -> None:
    """They serve, and it is said that they tip and catch nothing (common practice, no source)."""
    found = swap(world["drills"][DrillId("back-squat")], have("squat-stands", "bar", "discs"), **world)
    assert found.doable
    assert any("nothing catches a miss" in lost for lost in found.lost)


def test_nothing_to_hold_leaves_the_nearest_without(world) -> None:
    """With an empty room the squat without a bar is nearest to the one with it."""
    found = swap(world["drills"][DrillId("overhead-squat")], have(), **world)
    assert not found.doable
    assert found.load is None
    assert "air-squat" in [near.drill.id for near in found.swaps]


def test_every_swap_can_be_done_and_comes_nearest_first(world, asked) -> None:
    """For every drill and a few kits: doable, another, of a lift in common, at most five, in order."""
    for drill in asked:
        for kit_items in (have("stick", "headroom"), have("broom", "wall", "chair", "headroom")):
            found = swap(drill, kit_items, **world)
            distances = [near.distance for near in found.swaps]
            assert distances == sorted(distances)
            assert len(found.swaps) <= 5
            for near in found.swaps:
                assert near.drill.id != drill.id
                assert kit.fit(near.drill, kit_items, world["items"]) is not None
                assert set(near.drill.lifts) & set(drill.lifts)
                assert (near.drill.stage is Stage.PREPARE) == (drill.stage is Stage.PREPARE)


def test_easier_versions_are_those_that_entries_name(world, asked) -> None:
    """All of a drill's own that can be done, then those of its easier versions, each once and none harder."""
    for drill in asked:
        for kit_items in (have("stick", "headroom"), have("broom", "wall", "chair", "headroom")):
            found = swap(drill, kit_items, **world)
            ids = [each.drill.id for each in found.easier]
            assert len(ids) == len(set(ids)) <= 5
            assert drill.id not in ids
            own = [
                said.drill
                for said in drill.regressions
                if kit.fit(world["drills"][said.drill], kit_items, world["items"]) is not None
            ]
            assert ids[: len(own)] == own[:5]
            for each in found.easier:
                said = {said.drill: said.eases for said in world["drills"][each.than].regressions}
                assert said[each.drill.id] == each.eases
                assert kit.fit(each.drill, kit_items, world["items"]) is not None


def test_harder_versions_are_those_that_name_it_easier_or_build_on_it(world, asked) -> None:
    """What the other entries say, read the other way: all that name it while there is room, none that can't be done."""
    for drill in asked:
        kit_items = have("stick", "headroom", "wall")
        found = swap(drill, kit_items, **world)
        doable = [each for each in world["drills"].values() if kit.fit(each, kit_items, world["items"]) is not None]
        naming = [each.id for each in doable if drill.id in {said.drill for said in each.regressions}]
        building = [
            each.id
            for each in doable
            if any(drill.id in group for group in each.groups)
            or (drill.made_of and set(drill.made_of) < set(each.made_of))
        ]
        ids = [each.drill.id for each in found.harder]
        said = list(dict.fromkeys((*naming, *building)))
        assert ids[: len(said)] == said[:5]
        assert [bool(each.eased) for each in found.harder] == [each in naming for each in ids]
        assert [bool(each.turned) for each in found.harder] == [each not in said for each in ids]


def test_what_is_turned_up_covers_the_same_stretch_and_no_dial_but_weight_is_lower(world, asked) -> None:
    """More speed, a deeper catch, less help or planted feet, the reach and what is left out as they were."""
    turned = 0
    for drill in asked:
        for each in swap(drill, have("stick", "headroom", "wall", "bar"), **world).harder:
            if not each.turned or _more_of_it(drill, each):
                continue
            turned += 1
            lift, other = each.lift, each.drill
            assert lift is not None
            assert reach_on(drill, lift) == reach_on(other, lift)
            on_the_timeline = [{point for point in it.leaves_out if point in lift.points} for it in (drill, other)]
            assert on_the_timeline[0] == on_the_timeline[1]
            assert other.speed >= drill.speed
            assert other.catch >= drill.catch
            assert bool(other.aid) <= bool(drill.aid)
            caught = other.catch >= Catch.POWER and other.speed is Speed.FULL
            planted = drill.feet == "land" and other.feet == "still" and caught
            dials = (other.speed, other.catch, not other.aid) != (drill.speed, drill.catch, not drill.aid)
            assert dials or planted
            assert {change.dial for change in each.turned} <= {"speed", "catch", "aid", "feet"}
            assert ("feet" in {change.dial for change in each.turned}) is planted
    assert turned > 20


def _more_of_it(drill, each) -> bool:
    return reach_on(drill, each.lift) != reach_on(each.drill, each.lift)


def test_where_little_is_harder_what_covers_more_of_the_lift_follows(world, asked) -> None:
    """Up to three in all, those last: the drill's stretch and more of it, nothing newly left out, no dial lower."""
    further = 0
    for drill in asked:
        found = swap(drill, have("stick", "headroom", "wall", "bar"), **world).harder
        more = [bool(each.turned) and _more_of_it(drill, each) for each in found]
        assert more == sorted(more)
        if not any(more):
            continue
        assert len(found) <= 3
        for each in found[more.index(True) :]:
            further += 1
            points, other = each.lift.points, each.drill
            here, there = (tuple(map(points.index, reach_on(it, each.lift))) for it in (drill, other))
            assert there[0] <= here[0] <= here[1] <= there[1]
            assert {point for point in other.leaves_out if point in points} <= set(drill.leaves_out)
            assert other.stage >= drill.stage
            assert other.speed >= drill.speed
            assert other.catch >= drill.catch
            assert bool(other.aid) <= bool(drill.aid)
    assert further > len(asked) // 12


def test_what_strengthens_meanwhile_can_be_done_at_a_weight(world, asked) -> None:
    """Where the drill can't be had at its own weight: finish drills of its lift, no more than four, legs first."""
    kit_items, some = have("dumb-bell", "bench", "mat", "wall"), 0
    for drill in asked:
        found = swap(drill, kit_items, **world)
        assert len(found.strength) <= 4
        if found.load == drill.load[1]:
            assert found.strength == ()
        for each in found.strength:
            some += 1
            fitted = kit.fit(each, kit_items, world["items"])
            assert fitted is not None
            assert min(fitted.load, each.load[1]) >= Load.LIGHT
            assert each.stage is Stage.FINISH
            assert set(each.lifts) & set(drill.lifts)
    assert some > len(asked) // 12
    jerk = swap(world["drills"][DrillId("full-jerk")], kit_items, **world)
    assert jerk.strength[0].catch >= Catch.POWER


def test_one_more_item_opens_what_it_says(world) -> None:
    """Each drill named can be done with the item and not without."""
    kit_items = have("stick", "headroom")
    found = swap(world["drills"][DrillId("hang-clean")], kit_items, **world)
    assert [len(opens.drills) for opens in found.one_more] == sorted(
        (len(opens.drills) for opens in found.one_more), reverse=True
    )
    for opens in found.one_more:
        for drill_id in opens.drills:
            drill = world["drills"][drill_id]
            assert kit.fit(drill, kit_items, world["items"]) is None
            assert kit.fit(drill, kit_items | {opens.item}, world["items"]) is not None


def test_what_one_thing_more_would_let_be_done_is_named(world, asked) -> None:
    """The drill itself, not only others: each item alone is enough, and no other is."""
    named = 0
    for drill in asked:
        kit_items = have("stick", "wall", "mat")
        found = swap(drill, kit_items, **world)
        enough = {item for item in world["items"] if kit.fit(drill, kit_items | {item}, world["items"]) is not None}
        assert set(found.with_one) == (set() if found.doable else enough)
        named += bool(found.with_one)
    assert named > len(asked) // 5
