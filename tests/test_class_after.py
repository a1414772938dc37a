"""What comes after a class's lists: strength after the day's weight, bars that go round."""

import json
from pathlib import Path
from typing import Any

import pytest
from class_rules import broken, entry_of
from click.testing import CliRunner

from kb.ask.class_.strength import MOST
from kb.commands.group import drillpath

pytestmark = pytest.mark.no_cover

Json = dict[str, Any]
HEAVY = {"holds": ["full-snatch"], "weight_kg": 60}


class Asked:
    """A class file, asked as text and for programs."""

    def __init__(self, folder: Path, *lifters: Json, **more: object) -> None:
        people = [{"name": f"L{n}", **each} for n, each in enumerate(lifters)]
        asked = {"lift": "snatch", "minutes": 60, "gear": {"bar": 3, "stick": 12}, "lifters": people, **more}
        self.file = folder / "class.yaml"
        self.file.write_text(json.dumps(asked), "utf-8")

    def _ask(self, *options: str) -> str:
        result = CliRunner().invoke(drillpath, ["class", str(self.file), *options])
        assert result.exit_code == 0, result.output
        return result.stdout

    def text(self) -> str:
        """The answer on a terminal, as one line."""
        return " ".join(self._ask().split())

    def answer(self) -> Json:
        """The answer for programs, which keeps every rule."""
        found: Json = json.loads(self._ask("--json"))
        assert broken(found, self.file) == []
        return found


def ids(lifter: Json) -> list[str]:
    """The drills that strengthen."""
    return [slot["drill"] for slot in lifter["strength"]]


def test_after_the_day_s_weight_comes_what_strengthens(tmp_path: Path) -> None:
    """A squat, a hinge, a drive where there is a rack, and no light bar before them."""
    answer = Asked(tmp_path, HEAVY, gear={"bar": 3, "rack": 2, "stick": 4}).answer()
    (found,) = answer["lifters"]
    assert ids(found) == ["back-squat", "deadlift", "snatch-grip-push-press"]
    assert [slot["load"] for slot in found["strength"]] == ["working"] * MOST
    assert found["strength"][0]["start_s"] == found["slots"][-1]["end_s"]
    assert found["more"]["start_s"] == found["strength"][-1]["end_s"]


def test_without_a_rack_what_needs_none(tmp_path: Path) -> None:
    """One drill that leans, never two; the rest are holds and carries."""
    (found,) = Asked(tmp_path, HEAVY, gear={"bar": 1, "rack": 0}).answer()["lifters"]
    assert ids(found)[0] == "deadlift"
    assert "rack" not in {item for drill in ids(found) for item in entry_of("drill", drill)["equipment"]}
    assert not {"bent-row", "romanian-deadlift", "halting-deadlift"} & set(ids(found))


def test_one_rack_is_had_by_turns_or_by_one(tmp_path: Path) -> None:
    """Two of like weights share it; of unlike ones each does what the other doesn't need."""
    like = Asked(tmp_path, HEAVY, HEAVY, gear={"bar": 2, "rack": 1}).answer()["lifters"]
    assert [each["strength"][0]["shares"] for each in like] == [["L1"], ["L0"]]
    assert like[0]["strength"][0]["drill"] == like[1]["strength"][0]["drill"] == "back-squat"
    other = {"holds": ["full-snatch"], "weight_kg": 90}
    unlike = Asked(tmp_path, HEAVY, other, gear={"bar": 2, "rack": 1}).answer()["lifters"]
    assert ids(unlike[0])[0] != ids(unlike[1])[0]


def test_what_doesnt_fit_is_left_and_only_then_comes_a_light_bar(tmp_path: Path) -> None:
    """In full or not at all."""
    seen = set()
    for minutes in range(26, 46, 3):
        (found,) = Asked(tmp_path, HEAVY, minutes=minutes, gear={"bar": 1}).answer()["lifters"]
        seen.add(len(found["strength"]))
    assert {0, 1, MOST} <= seen


def test_who_mends_a_fault_and_who_stays_light_go_on_as_before(tmp_path: Path) -> None:
    """Strength is for who practises at weight."""
    mends = {"fault": "hips-rise-first", "cause": "lost-back-angle", "weight_kg": 40}
    answer = Asked(tmp_path, mends, {"holds": ["full-snatch"], "bar": "light"}).answer()
    assert [each["strength"] for each in answer["lifters"]] == [[], []]


HOLDS = {"holds": ["full-snatch"]}


def test_who_has_no_day_s_weight_works_up_to_one(tmp_path: Path) -> None:
    """Right after the lift at a light bar: eight rounds in turns, a coach's look once it has gone up, then strength."""
    asked = Asked(tmp_path, *[HOLDS] * 3, gear={"bar": 1, "stick": 4})
    answer, said = asked.answer(), asked.text()
    for each in answer["lifters"]:
        up, *rest = each["strength"]
        assert (up["as"], up["drill"], up["load"], up["rounds"], up["every_s"]) == (
            "up",
            "full-snatch",
            "working",
            8,
            120,
        )
        assert len(up["shares"]) == 2
        assert up["start_s"] - each["slots"][-1]["end_s"] <= 180
        assert rest
    (look,) = [duty for duty in answer["coaches"] if duty["does"] == "up"]
    assert look["who"] == ["L0", "L1", "L2"]
    assert "Who holds the lift and has no day's weight works up to one" in said
    assert "load for the others and call the standard" in said
    assert "After a weight is worked up to comes what strengthens" in said


def test_nobody_works_up_where_no_coach_can_look_or_no_time_is_left(tmp_path: Path) -> None:
    """Then it stays at the light bar; with the least time, four rounds."""
    rounds = set()
    for minutes in (24, 28, 32, 40):
        (found,) = Asked(tmp_path, HOLDS, minutes=minutes, gear={"bar": 1}).answer()["lifters"]
        rounds |= {slot["rounds"] for slot in found["strength"] if slot["as"] == "up"} or {0}
    assert {0, 4} <= rounds
    assert Asked(tmp_path, HOLDS, gear={"bar": 0, "stick": 2}).answer()["lifters"][0]["strength"] == []


@pytest.mark.parametrize(("floors", "lowered"), [(0, True), ("plenty", False)])
def test_where_nothing_may_be_dropped_the_way_out_is_to_lower_it(tmp_path: Path, floors: object, lowered: bool) -> None:
    """For every drill of the class, also those that need no floor of their own to drop on."""
    gear = {"bar": 2, "stick": 4, "drop-floor": floors}
    said = Asked(tmp_path, {"holds": ["full-snatch"], "bar": "light"}, gear=gear).text()
    assert ("nothing may be dropped on this floor" in said) is lowered
    assert ("let go, hop forward" in said) is not lowered


def test_the_rack_is_for_who_cant_clean_what_they_jerk(tmp_path: Path) -> None:
    """One pair of stands, two who need it: never at the same time, and the coach's page says who has it when."""
    jerks = {"holds": ["full-jerk"]}
    needs = {**jerks, "bar": "racked"}
    asked = Asked(tmp_path, needs, jerks, needs, jerks, lift="jerk", gear={"bar": 4, "rack": 1, "stick": 4})
    answer, said = asked.answer(), asked.text()
    ups = {each["name"]: [slot for slot in each["strength"] if slot["as"] == "up"] for each in answer["lifters"]}
    assert ups["L0"]
    assert "rack" in ups["L0"][0]["gear"]
    assert "The bar comes from the rack." in said
    assert " rack L0" in said
    sheet = tmp_path / "sheet.html"
    asked._ask("--sheet", str(sheet))
    page = sheet.read_text("utf-8")
    assert '<span class="at">rack</span>' in page  # who has it when is on paper too
    assert f"{ups['L0'][0]['rounds']} boxes to tick" in page  # one a round
    heavy = Asked(
        tmp_path, {**needs, "weight_kg": 60}, {**needs, "weight_kg": 90}, lift="jerk", gear={"bar": 2, "rack": 1}
    )
    first, second = ([s for s in each["slots"] if s["load"] == "working"] for each in heavy.answer()["lifters"])
    assert first[-1]["end_s"] <= second[0]["start_s"] or second[-1]["end_s"] <= first[0]["start_s"]
    assert "from the rack" in heavy.text()


def test_a_card_says_the_standard_once(tmp_path: Path) -> None:
    """How heavy, by what it is on, what to say; the second card only the drill."""
    other = {"holds": ["full-snatch"], "weight_kg": 90}
    said = Asked(tmp_path, HEAVY, other, gear={"bar": 2}).text()
    assert said.count("70 to 110 % of the best clean") == 2
    assert said.count("seat and shoulders rise together") == 1
    assert "After the day's weight comes what strengthens" in said


NEW: Json = {"holds": []}


def turns(answer: Json) -> list[Json | None]:
    """Each lifter's turn at a bar."""
    return [each["bar_turn"] for each in answer["lifters"]]


def test_a_bar_that_stands_by_goes_round_among_the_new(tmp_path: Path) -> None:
    """One after the other, one round of what was slow or held, and the coach's list says whose turn it is."""
    asked = Asked(tmp_path, HEAVY, *[NEW] * 8, minutes=55, gear={"bar": 2, "stick": 12}, today=["hang-power-snatch"])
    answer, said = asked.answer(), asked.text()
    found = [each for each in turns(answer) if each]
    assert len(found) == 8
    assert turns(answer)[0] is None
    assert {entry_of("drill", each["drill"])["speed"] for each in found} <= {"held", "slow", "paused"}
    starts = sorted(each["start_s"] for each in found)
    assert len(set(starts)) == 8
    assert starts[0] >= max(slot["end_s"] for each in answer["lifters"][1:] for slot in each["slots"])
    (stays,) = [duty for duty in answer["coaches"] if duty["does"] == "stay"]
    assert stays["who"] == [f"L{n}" for n in range(1, 9)]
    assert "1 bar that nobody uses goes round" in said
    assert "Stay with the bar, one round each in this order: L1, L2, L3, L4, L5, L6, L7 and L8 (" in said
    assert said.count("At the bar, in your turn") == 1


def test_no_bar_goes_round_where_none_stands_by(tmp_path: Path) -> None:
    """Two bars, and two who have them to the end; or bars without anybody who only had a stick."""
    busy = Asked(tmp_path, HEAVY, HEAVY, NEW, NEW, gear={"bar": 2, "stick": 9}, today=["hang-power-snatch"])
    assert not any(turns(busy.answer()))
    assert not any(turns(Asked(tmp_path, HEAVY, HEAVY).answer()))


def test_the_sheet_has_each_one_s_own_turn(tmp_path: Path) -> None:
    """When, and where."""
    asked = Asked(tmp_path, HEAVY, *[NEW] * 8, minutes=55, gear={"bar": 2, "stick": 12}, today=["hang-power-snatch"])
    page = tmp_path / "page.html"
    found = [each for each in turns(asked.answer()) if each]
    CliRunner().invoke(drillpath, ["class", str(asked.file), "--sheet", str(page)])
    text = page.read_text("utf-8")
    assert text.count("At the bar, in your turn") == len(found) == 8
    for each in found:
        assert f"{each['start_s'] // 60}:{each['start_s'] % 60:02}" in text


def test_who_practises_changes_at_the_bar_that_they_have(tmp_path: Path) -> None:
    """What was checked with a stick comes round at the light bar in their hands; no stick is taken for it."""
    asked = Asked(tmp_path, {"holds": ["full-jerk"]}, lift="jerk", kit="school-hall", gear={"bar": 1, "stick": 1})
    ((more,),) = [[each["more"] for each in asked.answer()["lifters"]]]
    assert (more["drill"], more["change_s"]) == ("full-jerk", 240)
    assert "bar" in more["gear"]
    assert "stick" not in more["gear"]
    assert [(each["drill"], each["load"]) for each in more["by_turns"]] == [("power-jerk", "light")]


def test_who_does_the_same_at_their_own_bars_has_one_card(tmp_path: Path) -> None:
    """The numbers in the order of the names; who takes turns has a card of their own."""
    holds = {"holds": ["full-clean"]}
    said = Asked(tmp_path, holds, holds, lift="clean", gear={"bar": 2}).text()
    assert "L0 and L1: practising, group 1" in said
    assert "bar 1/2 Clean: 4 x 2" in said
    said = Asked(tmp_path, holds, holds, lift="clean", gear={"bar": 1}).text()
    assert "L0: practising, group 1" in said
    assert "L1: practising, group 1" in said


def test_the_coach_s_page_says_who_shares_which_bar(tmp_path: Path) -> None:
    """From when, and up to which weight for whom; what a helper does is said where there is one."""
    lighter = {"holds": ["full-snatch"], "weight_kg": 50}
    said = Asked(tmp_path, HEAVY, lighter, gear={"bar": 1}, helpers=1).text()
    assert "Bars bar 1 L1 from 10:" in said or "Bars bar 1 L0 from 10:" in said or "Bars bar 1 L0 and L1" in said
    assert "It goes up to 50 kg (L1) and 60 kg (L0)." in said
    assert "Who helps and doesn't lift keeps the time" in said
    assert "Who helps" not in Asked(tmp_path, HEAVY).text()


def test_a_learner_does_what_they_hold_at_a_light_bar_first(tmp_path: Path) -> None:
    """Then what is new."""
    held = {"holds": ["push-press"]}
    (found,) = Asked(tmp_path, held, lift="jerk", gear={"bar": 1, "rack": 1}).answer()["lifters"]
    assert (found["slots"][0]["drill"], found["slots"][0]["load"], found["slots"][0]["as"]) == (
        "push-press",
        "light",
        "work",
    )


def test_who_is_named_by_a_trouble_is_sent_to_ask_first(tmp_path: Path) -> None:
    """A name such as these is a word of the body: said before the class, beside what is said to all."""
    asked = Asked(tmp_path, {"holds": [], "name": "Pregnant, 20 weeks"}, {"holds": [], "name": "Ada"})
    said = asked.text()
    assert "Ask round first: who is sore, ill, dizzy or hurt today doesn't lift by this plan" in said
    assert "! Pregnant, 20 weeks: not by this plan, but after asking someone qualified" in said
    assert "! Ada" not in said


def test_who_is_stiff_goes_no_further_than_a_stick_is_held(tmp_path: Path) -> None:
    """Said by name before the class, also where one list is made of several; of nobody else."""
    stiff = {"name": "Sixty-one", "fault": "soft-elbows", "cause": "stiff-shoulders"}
    asked = Asked(tmp_path, stiff, {"name": "Ada", "fault": "early-arm-bend"}, kit="hall")
    said = asked.text()
    assert "! Sixty-one: stiff in a joint, so whatever the card has, no bar in a position that a stick isn't" in said
    assert "Ada: stiff" not in said


def test_who_learns_goes_on_with_what_they_hold_at_a_bar_and_what_is_new_in_turns(tmp_path: Path) -> None:
    """Ten minutes of each while a bar is free, beginning with the bar; nobody holds splits for forty minutes."""
    learns = {"holds": ["hang-clean", "dip-and-drive"]}
    asked = Asked(tmp_path, learns, learns, lift="clean-and-jerk", minutes=75, new=3, gear={"bar": 2, "stick": 4})
    for each in asked.answer()["lifters"]:
        more = [each["more"], *each["then"]]
        assert [part["drill"] == "hang-clean" for part in more] == [True, False] * (len(more) // 2)
        assert [part["gear"] for part in more if part["drill"] == "hang-clean"] == [["bar"]] * (len(more) // 2)
        assert all(part["end_s"] - part["start_s"] >= 600 for part in more)


def test_a_class_whose_gear_is_not_counted_is_planned(tmp_path: Path) -> None:
    """Of everything there is enough then: one beginner, no `gear` in the file."""
    file = tmp_path / "class.yaml"
    file.write_text("lift: jerk\nminutes: 45\nlifters:\n  - {name: Bo, holds: []}\n", encoding="utf-8")
    told = CliRunner().invoke(drillpath, ["class", str(file)])
    assert told.exit_code == 0, told.exception
    assert "Bo" in told.stdout
