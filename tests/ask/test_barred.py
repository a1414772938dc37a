"""What is ruled out by noise or by a position, on small records and on the shipped library."""

import pytest
from handmade import drill

from kb import kit
from kb.ask import read
from kb.ask.barred import WITHOUT, Ruled, fit_ruled, quiet_shelf, shelf_without, why_barred
from kb.ask.chain import chain
from kb.ask.path import path
from kb.ask.question import ChainQuestion
from kb.ask.shelf import ending_in
from kb.ask.swap import swap
from kb.errors import BadInput
from kb.terms import DrillId, FaultId, Item, ItemId, LiftId, Load, Speed

pytestmark = pytest.mark.no_cover

FLAT = frozenset(map(ItemId, ("bar", "discs", "stick", "headroom", "wall", "floor-line", "mat", "rack", "drop-floor")))
QUIET = Ruled(quiet=True)


@pytest.fixture(scope="module")
def world(db):
    drills = read.drills(db)
    texts = read.sections(db, "drill", drills)
    told = {each.id: each._replace(sections=texts[each.id]) for each in drills.values()}
    return {"drills": told, "items": read.items(db), "lifts": read.lifts(db)}


def test_feet_that_land_are_not_quiet() -> None:
    """A step is; and nothing is barred where nothing is ruled out."""
    for feet, reasons in (("still", 0), ("step", 0), ("land", 1)):
        one = drill("one", feet=feet)
        assert len(why_barred(one, QUIET, {})) == reasons
        assert why_barred(one, Ruled(), {}) == ()


def test_quiet_is_what_a_hand_lowers() -> None:
    """No more than light without a rack to take it back; None for what needs more."""
    items = {each: Item(id=each, name=each) for each in map(ItemId, ("bar", "rack"))}
    heavy = drill("heavy", load=(Load.LIGHT, Load.WORKING), equipment=("bar",))
    racked = heavy._replace(equipment=(ItemId("bar"), ItemId("rack")))
    have = frozenset(items)
    assert fit_ruled(heavy, have, items, Ruled()).load is Load.WORKING
    assert fit_ruled(heavy, have, items, QUIET).load is Load.LIGHT
    assert fit_ruled(racked, have, items, QUIET).load is Load.WORKING
    assert fit_ruled(heavy._replace(load=(Load.WORKING, Load.WORKING)), have, items, QUIET) is None


def test_all_that_is_named_is_quiet(world) -> None:
    """Easier, harder and instead, of every drill: no feet that land; a drill that lands is barred and says so."""
    for one in world["drills"].values():
        found = swap(one, FLAT, **world, ruled=QUIET)
        assert bool(found.barred) is (one.feet == "land")
        for part in (found.easier, found.harder, found.swaps):
            assert all(each.drill.feet != "land" for each in part)
        assert all(each.feet != "land" for each in found.strength)


@pytest.mark.parametrize(
    ("word", "has", "has_not"),
    [
        (
            "behind-neck",
            ["behind-neck-jerk", "back-squat", "press-under", "drop-under"],
            ["overhead-squat", "jerk-balance"],
        ),
        (
            "front-rack",
            ["front-squat", "full-clean", "jerk-dead-stop", "rack-hold"],
            ["back-squat", "full-snatch", "deadlift"],
        ),
        ("full-squat", ["full-clean", "overhead-squat", "air-squat"], ["power-clean", "split-squat", "full-jerk"]),
        (
            "overhead",
            ["full-snatch", "overhead-squat", "push-press", "full-jerk"],
            ["full-clean", "front-squat", "deadlift"],
        ),
        ("split", ["full-jerk", "split-squat", "jerk-balance"], ["power-jerk", "push-press", "full-clean"]),
    ],
)
def test_what_a_position_bars(world, db, word: str, has: list[str], has_not: list[str]) -> None:
    """By the posture passed through or aimed at, the catch, or what the text says."""
    ruled = Ruled(without=frozenset({word}), positions=read.positions(db))
    for ids, said in ((has, (WITHOUT[word],)), (has_not, ())):
        for drill_id in ids:
            assert why_barred(world["drills"][DrillId(drill_id)], ruled, world["lifts"]) == said, drill_id


def test_a_bored_lifter_gets_substitutes_at_the_weight_he_lifts(world, db) -> None:
    """No stick before a bar, none that is only an easier version, and none with the bar behind the neck."""
    jerk = world["drills"][DrillId("behind-neck-jerk")]
    ruled = Ruled(without=frozenset({"behind-neck"}), positions=read.positions(db))
    found = swap(jerk, FLAT, **world, ruled=ruled, instead=True)
    ids = [each.drill.id for each in found.swaps]
    assert ids[0] == "push-press", "one fault that the jerk works on it works on too"
    assert ids.index("jerk-dead-stop") <= 2
    assert all(kit.fit(each.drill, FLAT, world["items"]).load >= Load.LIGHT for each in found.swaps)
    assert all(each.drill.load[1] >= Load.LIGHT for each in found.swaps)
    assert not {"tall-jerk", "footprint-tall-jerk"} & set(ids)
    assert not any("behind" in lost for each in found.swaps for lost in each.loses)
    assert found.strength == ()


def test_the_quiet_drop_is_as_quick_and_harder(world) -> None:
    """Feet planted: the nearest, and what comes after; with --instead the slow one is only easier."""
    found = swap(world["drills"][DrillId("drop-under")], FLAT, **world, ruled=QUIET, instead=True)
    assert found.swaps[0].drill.id == "planted-drop-under"
    assert found.swaps[0].drill.speed is Speed.FULL
    assert "planted-drop-under" in [each.drill.id for each in found.harder]
    assert "press-under" in [each.drill.id for each in found.easier]
    assert "press-under" not in [each.drill.id for each in found.swaps]
    for tall in ("tall-clean", "tall-snatch"):
        assert swap(world["drills"][DrillId(tall)], FLAT, **world, ruled=QUIET).swaps[0].drill.id == f"planted-{tall}"


def test_what_is_barred_is_kept_strong_where_nothing_else_is_as_heavy(world) -> None:
    """A jerk at a working weight has no quiet substitute that heavy; the drop under has."""
    jerk = swap(world["drills"][DrillId("full-jerk")], FLAT, **world, ruled=QUIET)
    assert jerk.swaps[0].drill.id == "push-press"
    assert jerk.strength
    assert swap(world["drills"][DrillId("drop-under")], FLAT, **world, ruled=QUIET).strength == ()


def test_a_path_that_stays_quiet(db) -> None:
    """To a part with planted feet; the lift itself lands, and quiet parts are named to end in."""
    shelf = read.shelf(db, LiftId("snatch"))
    to = quiet_shelf(ending_in(shelf, DrillId("planted-tall-snatch")))
    found = path(to, have=FLAT).entries
    assert found[-1].drill.id == "planted-tall-snatch"
    assert all(each.drill.feet != "land" for each in found)
    with pytest.raises(BadInput, match="the snatch isn't quiet") as refused:
        quiet_shelf(shelf)
    assert refused.value.nearest
    for part in refused.value.nearest:
        assert path(quiet_shelf(ending_in(shelf, DrillId(part))), have=FLAT).entries


def test_what_a_barred_drill_is_turned_up_by_is_the_nearest(world) -> None:
    """Its own way is as loud as itself; of a drill that can be done it is its own."""
    loud = swap(world["drills"][DrillId("drop-under")], FLAT, **world, ruled=QUIET)
    assert loud.turned_up is not None
    assert loud.turned_up.id in {each.drill.id for each in loud.swaps}
    quiet = swap(world["drills"][DrillId("press-under")], FLAT, **world, ruled=QUIET)
    assert quiet.turned_up is not None
    assert quiet.turned_up.id == "press-under"


def test_what_a_lifter_will_not_do_stands_in_no_answer(db) -> None:
    """Every drill of a chain but the last may be left out in turn; the last can't, and parts are named instead."""
    shelf = read.shelf(db, LiftId("snatch"))
    asked = ChainQuestion(FaultId("catches-high"), FLAT)
    for entry in chain(shelf, asked).routes[0].entries[:-1]:
        left_out = frozenset((entry.drill.id,))
        found = chain(shelf_without(shelf, left_out), asked)
        assert left_out.isdisjoint(each.drill.id for route in found.routes for each in route.entries)
    with pytest.raises(BadInput, match="can't be left out") as refused:
        shelf_without(shelf, frozenset((shelf.lift.drill,)))
    assert DrillId("hang-snatch") in refused.value.nearest
