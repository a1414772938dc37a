"""What to put on the bar, as it is said."""

from typing import Any

import pytest
from handmade import drill

from kb.bests import Best
from kb.discs import Iron, exactly, iron_of
from kb.loading import loaded, weighed
from kb.show.load_text import Answer, discs_said, load_text, weight_said
from kb.show.setting import Setting
from kb.terms import Catch, Dose, Drill, ItemId, LiftId, Load, LoadFrom

NAMES = {"clean": "Clean"}
SQUAT = drill(
    "front-squat",
    equipment=(ItemId("bar"),),
    load=(Load.STICK, Load.WORKING),
    load_from=LoadFrom(LiftId("clean"), (40, 70)),
    dose=Dose(rounds=3, reps=4),
    catch=Catch.FULL,
)


def said(made: Drill, bests: dict[str, Best], iron: Iron | None = None, width: int = 80, **rest: Any) -> list[str]:
    """The answer in lines."""
    iron = iron or iron_of()
    given = {"at": Load.LIGHT, **rest}
    found = weighed(made, bests, iron)
    return load_text(Answer(made, found, iron, bests=bests, names=NAMES, **given), Setting(width))


def test_the_bests_share_is_the_reason() -> None:
    """Which best, how much of it, and that it was rounded down."""
    lines = said(SQUAT, {"clean": Best(90)})
    assert lines[0] == "Front squat: 36 kg"
    assert lines[3].startswith("  Why        40 to 70 % of the best clean, 90 kg; rounded down")
    assert "! Nothing goes on the bar before the form without a weight met the standard." in lines
    assert lines[-1] == "No qualified coach has reviewed this library yet."


def test_a_best_from_a_set_names_its_formula() -> None:
    """And how light follows from it."""
    text = " ".join(" ".join(said(SQUAT, {"front-squat": Best(90, "Brzycki 1993")})).split())
    assert (
        "two good reps in hand: 6 can be done at 85 % of the best front squat, 90 kg, by Brzycki 1993 (the least of"
        " three formulas); light is 40/70 of that; rounded down" in text
    )
    working = " ".join(said(SQUAT, {"front-squat": Best(90)}, at=Load.WORKING))
    assert "light is" not in working
    assert "Up to" not in working
    assert "Ask someone qualified first" in working


def test_the_bar_alone_is_said_to_be_the_beginning() -> None:
    """Where the least of the range is lighter."""
    lines = said(SQUAT, {"clean": Best(40)})
    assert lines[0] == "Front squat: 20 kg"
    assert lines[1] == "  Discs      no discs, bar 20 kg"
    assert "begun with the bar alone" in " ".join(" ".join(lines).split())


def test_what_to_give_where_no_best_is_known() -> None:
    """A best that there is a share of; else that there is none."""
    assert any("--best clean=80" in line for line in said(SQUAT, {}))
    assert any("no share of a best" in line for line in said(SQUAT._replace(load_from=None), {}))
    assert any("without a bar" in line for line in said(SQUAT._replace(equipment=()), {}))
    stick = said(SQUAT._replace(load=(Load.NONE, Load.STICK), load_from=None), {})
    assert stick[0] == "Front squat: done without a weight, so nothing goes on a bar."
    assert not any("More when" in line or "Give" in line for line in stick)


def test_a_weight_asked_for_is_held_against_the_bests() -> None:
    """More than they allow is said first of all that is said."""
    heavy = loaded(exactly(80, iron_of()), iron_of())
    lines = said(SQUAT, {"clean": Best(90)}, given=heavy)
    assert lines[0] == "Front squat: 80 kg"
    assert lines[1].startswith("80 kg is 89 % of the best, 90 kg: for singles at most")
    assert "which go to 63 kg." in " ".join(lines[1:4])
    assert not any("How much" in line or "More when" in line for line in lines)
    above = " ".join(said(SQUAT, {"clean": Best(70)}, given=heavy))
    assert "80 kg is 114 % of the best, 70 kg: not yet." in above
    assert "so 80 kg is 8 sessions away at least" in above  # four steps of 2.5 kg, two sessions each
    light = loaded(exactly(50, iron_of()), iron_of())
    lines = said(SQUAT, {"clean": Best(90)}, given=light)
    assert lines[2].startswith("  Up to      63 kg")
    assert not any("of the best, 90" in line for line in lines)
    assert any("How much" in line for line in said(SQUAT, {}, given=heavy))


def test_small_discs_leave_a_bar_too_low() -> None:
    """On the floor, below discs of full size."""
    low = "! Without discs of full size"
    assert any(line.startswith(low) for line in said(SQUAT, {"clean": Best(60)}, floor=True))
    assert not any(line.startswith(low) for line in said(SQUAT, {"clean": Best(120)}, floor=True))
    assert not any(line.startswith(low) for line in said(SQUAT, {"clean": Best(60)}))


def test_a_drill_that_begins_with_a_weight_has_no_form_without() -> None:
    """So nothing is said of it."""
    strong = SQUAT._replace(load=(Load.LIGHT, Load.WORKING))
    assert not any("without a weight" in line for line in said(strong, {"clean": Best(90)}))


@pytest.mark.parametrize("width", [40, 60, 80, 100])
def test_nothing_is_wider_than_the_page(width: int) -> None:
    """On a phone's terminal too."""
    for bests in ({}, {"clean": Best(90)}, {"front-squat": Best(90, "Brzycki 1993")}):
        assert max(map(len, said(SQUAT, bests, width=width, floor=True))) <= width


def test_pounds_and_collars_are_said() -> None:
    """In the unit that was asked for."""
    iron = iron_of(unit="lb", collars=True)
    bar = loaded(exactly(145, iron), iron)
    assert discs_said(bar, iron) == "45 on each side, bar 45 lb, collars 10 lb together"
    assert weight_said(bar.kg, iron) == "145 lb"
