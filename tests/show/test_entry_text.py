"""Entries on a terminal: each kind with its facts, then its text."""

from dataclasses import replace

import pytest
from handmade import library
from small_answers import built

from kb.ask import read
from kb.show.entry_text import drill_text, equipment_text, fault_text, lift_text, position_text
from kb.show.prose import prose
from kb.show.setting import Setting
from kb.terms import Catch, DrillId, FaultId, ItemId, LiftId, Load, LoadFrom, PositionId, Speed, StandIn

DB = read.open_catalogue(built() / "out" / "catalogue.db")
LIFTS = read.lifts(DB)
NAMES = {
    row[0]: row[1]
    for table in ("position", "equipment", "drill", "fault", "lift")
    for row in DB.execute(f"select id, name from {table}")
}


def flat(lines: list[str]) -> str:
    """Lines as one text."""
    return " ".join(" ".join(lines).split())


def a_drill(drill_id: str, **changed: object) -> list[str]:
    """A drill of the small library, set."""
    drill = read.with_text(DB, read.drills(DB)[DrillId(drill_id)])
    return drill_text(drill._replace(**changed), NAMES, LIFTS, Setting())


def test_a_drill_is_drawn_and_then_told() -> None:
    """Where it lies on its lift, how much, what it needs, what it works on, its sections."""
    lines = a_drill("tall-clean")
    text = flat(lines)
    assert lines[0] == "Tall clean" + " " * 56 + "clean, segment"
    assert any(line.strip().startswith("1  Tall clean") and line.endswith("]") for line in lines)
    for said in (
        "How much 4 x 3, rest 50 s, 5 min",
        "Load stick to light weight, 25 to 45 % of the best clean",
        "Move on when 5 of 6: bar met above parallel",
        "Gear bar",
        "First Front squat",
        "Mind wrist, knee",
        "Works on - The bar crashes onto the shoulders: loses contact and drops away",
        "Set up Stand tall",
        "Miss Bar in front of you",
    ):
        assert said in text


def test_preparation_opens_and_has_no_place_on_a_timeline() -> None:
    """No chart, no load."""
    text = flat(a_drill("half-kneel-knee-over-toe"))
    assert "preparation" in text
    assert "Opens ankle" in text
    assert "Load" not in text
    assert "]" not in text.split("How much")[0]


def test_fields_that_few_drills_have() -> None:
    """A complex, help, easier versions, one load, no gear, whom it isn't for; ids that are gone."""
    tall = read.drills(DB)[DrillId("tall-clean")]
    text = flat(
        a_drill(
            "tall-clean",
            made_of=(DrillId("front-squat"), DrillId("gone")),
            aid=("hand",),
            regressions=(),
            load=(Load.LIGHT, Load.LIGHT),
            load_from=None,
            equipment=(),
            not_for="Nobody.",
            faults=(tall.faults[0]._replace(cause=None),),
        )
    )
    for said in ("Made of Front squat and gone", "Helped by hand", "Load light weight", "Gear none", "Not for Nobody."):
        assert said in text
    assert "- The bar crashes onto the shoulders Set up" in text
    two = {LiftId("clean"): ("start", "knee"), LiftId("jerk"): ("rack", "dip")}
    assert "Jerk:" in a_drill("tall-clean", reach=two, load_from=LoadFrom(lift=LiftId("clean"), percent=(10, 20)))


def test_a_fault_has_its_causes_and_checks() -> None:
    """As a short decision list, commonest first; then where to go on."""
    lines = fault_text(read.fault(DB, FaultId("bar-drifts-forward")), NAMES, LIFTS, Setting())
    text = flat(lines)
    assert "Seen from the side" in text
    assert "Compare Hips rise first [hips-rise-first]" in text
    assert "Shows at slow speed" in text
    assert "1. slack lats (position sense)." in text
    assert "4. made by hips rise (earlier: Hips rise first)." in text
    assert text.index("Causes, commonest first") < text.index("To tell the causes apart")
    assert lines[-1] == "`drillpath chain bar-drifts-forward --cause ...`"


def test_a_fault_of_two_lifts_is_drawn_on_both() -> None:
    """And asks which."""
    fault = read.fault(DB, FaultId("clean-bar-crashes"))
    lines = fault_text(
        fault._replace(lifts=(LiftId("clean"), LiftId("clean-and-jerk")), sections={}), NAMES, LIFTS, Setting()
    )
    assert "Clean:" in lines
    assert "Clean and jerk:" in lines
    assert "in a catch (power or deeper)" in flat(lines)
    assert lines[-1] == "`drillpath chain clean-bar-crashes --lift clean-and-jerk --cause ...`"


def test_causes_that_no_check_parts_are_named() -> None:
    """An honest list says what it can't do."""
    fault = library().faults[FaultId("bar-crashes")]
    text = flat(fault_text(fault, {}, library().lifts, Setting()))
    assert "None of these tells" in text


def test_a_lift_is_its_timeline() -> None:
    """With its parts, its drill and what counts as learnt."""
    text = flat(lift_text(read.lift(DB, LiftId("clean-and-jerk")), NAMES, Setting()))
    assert "Timeline 1 start Clean start 2 knee" in text
    assert "Made of Clean and Jerk" in text
    assert "Drill Clean and jerk [full-clean-and-jerk]" in text
    assert text.endswith("`drillpath path clean-and-jerk`")


def test_a_position_is_its_angles() -> None:
    """In degrees, with what they are from."""
    text = flat(position_text(read.position(DB, PositionId("clean-receive")), Setting()))
    assert "ankle 40, knee 137" in text
    assert "Bar shoulders Feet feet flat" in text


def test_equipment_names_what_stands_in_for_it() -> None:
    """And what that loses and caps."""
    item = read.items(DB)[ItemId("bar")]
    capped = StandIn(item=ItemId("gone"), lost="all", speed=Speed.SLOW, catch=Catch.POWER)
    text = flat(equipment_text(item._replace(stand_ins=(*item.stand_ins, capped)), NAMES, Setting()))
    assert "Kits hall and full" in text
    assert "Stick: nothing to push against" in text
    assert "(no more than stick)" in text
    assert "gone: all (no faster than slow, no deeper than power)" in text
    free = item._replace(stand_ins=(StandIn(item=ItemId("stick"), lost="a little"),))
    assert flat(equipment_text(free, NAMES, Setting())).endswith("Stick: a little")


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("One\ntwo.\n\nThree.", ["One two.", "", "Three."]),
        ("1. One\n   two\n2. Three", ["1. One two", "2. Three"]),
        ("- **One**\n- `two`", ["- One", "- two"]),
        ("Before:\n- one\n\nAfter.", ["Before:", "- one", "", "After."]),
        ("", []),
    ],
)
def test_markdown_is_set_as_lines(text: str, lines: list[str]) -> None:
    """Paragraphs are filled, items hang."""
    assert prose(text, Setting()) == lines


def test_the_handmade_library_can_be_shown() -> None:
    """Whatever is missing in an entry."""
    made = library()
    for drill in made.drills.values():
        assert drill_text(drill, {}, made.lifts, Setting())[0].startswith(drill.name)
    assert replace(made).faults
