"""Stand-ins, one hop, and what they cap: DESIGN's rules on equipment, case by case."""

from kb.kit import fit, gear_at, loads
from kb.terms import Catch, Drill, DrillId, Item, ItemId, LiftId, Load, Speed, Stage, Standard, StandIn

ITEMS = {
    item.id: item
    for item in (
        Item(
            id=ItemId("bar"),
            name="Bar",
            stand_ins=(
                StandIn(item=ItemId("broom"), lost="balance", load=Load.STICK),
                StandIn(item=ItemId("stick"), lost="weight", load=Load.STICK),
            ),
        ),
        Item(id=ItemId("stick"), name="Stick", stand_ins=(StandIn(item=ItemId("broom"), lost="balance"),)),
        Item(id=ItemId("broom"), name="Broom"),
        Item(
            id=ItemId("blocks"),
            name="Blocks",
            stand_ins=(StandIn(item=ItemId("bench"), lost="height", load=Load.LIGHT),),
        ),
        Item(
            id=ItemId("bench"),
            name="Bench",
            stand_ins=(StandIn(item=ItemId("chair"), lost="height", speed=Speed.SLOW),),
        ),
        Item(id=ItemId("chair"), name="Chair"),
        Item(
            id=ItemId("rack"),
            name="Rack",
            stand_ins=(
                StandIn(item=ItemId("bench"), lost="height", load=Load.STICK),
                StandIn(item=ItemId("blocks"), lost="", load=Load.LIGHT, catch=Catch.POWER),
            ),
        ),
    )
}


def needs(*items: str, load: tuple[Load, Load] = (Load.STICK, Load.WORKING)) -> Drill:
    return Drill(
        id=DrillId("d"),
        name="d",
        lifts=(LiftId("clean"),),
        stage=Stage.WHOLE,
        load=load,
        equipment=tuple(ItemId(item) for item in items),
        standard=Standard(count=1, of=1, seen="it"),
    )


def have(*items: str) -> frozenset[ItemId]:
    return frozenset(ItemId(item) for item in items)


def test_the_item_itself_comes_before_any_stand_in() -> None:
    """With the bar there, nothing is capped."""
    fitted = fit(needs("bar"), have("bar", "stick"), ITEMS)
    assert fitted is not None
    assert [(gear.item, gear.using) for gear in fitted.gear] == [("bar", "bar")]
    assert fitted.load is Load.WORKING


def test_of_several_stand_ins_the_one_that_leaves_most_load() -> None:
    """Blocks leave light where a bench leaves a stick."""
    fitted = fit(needs("rack"), have("bench", "blocks"), ITEMS)
    assert fitted is not None
    assert (fitted.gear[0].using, fitted.load, fitted.catch) == ("blocks", Load.LIGHT, Catch.POWER)


def test_then_id_order() -> None:
    """Broom before stick where both leave as much."""
    fitted = fit(needs("bar"), have("stick", "broom"), ITEMS)
    assert fitted is not None
    assert fitted.gear[0].using == "broom"


def test_stand_ins_are_never_chained() -> None:
    """A chair serves for a bench, a bench for blocks: a chair for blocks does not."""
    assert fit(needs("blocks"), have("chair"), ITEMS) is None


def test_over_items_the_lowest_cap() -> None:
    """Bar and blocks, both by stand-ins: each dial at its lowest."""
    fitted = fit(needs("bar", "blocks", "bench"), have("stick", "bench"), ITEMS)
    assert fitted is not None
    assert (fitted.load, fitted.speed) == (Load.STICK, Speed.FULL)


def test_below_its_least_load_it_cannot_be_done() -> None:
    """A drill that makes sense only from light up has no fit with a stick."""
    assert fit(needs("bar", load=(Load.LIGHT, Load.WORKING)), have("stick"), ITEMS) is None


def test_loads_run_from_the_least_to_what_kit_and_limit_allow() -> None:
    """Least first."""
    drill = needs("bar")
    fitted = fit(drill, have("bar"), ITEMS)
    assert fitted is not None
    assert loads(drill, fitted, Load.LIGHT) == (Load.STICK, Load.LIGHT)
    assert loads(drill, fitted, Load.NONE) == ()


def test_at_stick_load_a_stick_is_picked_up_though_the_bar_is_there() -> None:
    """Six bars and fourteen sticks: nobody takes a bar for a stick's work."""
    drill = needs("bar", "bench")
    there = have("bar", "stick", "bench")
    fitted = fit(drill, there, ITEMS)
    assert fitted is not None
    assert [gear.using for gear in gear_at(fitted, Load.STICK, there, ITEMS)] == ["stick", "bench"]
    assert [gear.using for gear in gear_at(fitted, Load.LIGHT, there, ITEMS)] == ["bar", "bench"]
