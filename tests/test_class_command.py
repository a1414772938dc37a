"""`drillpath class`: the demo proved, forty lifters, impossible classes, and the answer where there is no solver."""

import json
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from class_rules import broken
from click.testing import CliRunner, Result

from kb.ask import read
from kb.commands.group import drillpath
from kb.intake.class_file import DEMO

pytestmark = pytest.mark.no_cover

FAULTS = (
    {"fault": "hips-rise-first", "cause": "lost-back-angle", "weight_kg": 40},
    {"fault": "snatch-press-out", "cause": "late-turnover", "weight_kg": 35},
    {"holds": []},
    {"fault": "bar-forward-overhead", "cause": "stiff-shoulders", "weight_kg": 30},
    {"fault": "snatch-folds-in-catch", "cause": "lost-trunk"},
    {"fault": "bar-loops-out", "cause": "lost-close-bar", "weight_kg": 45},
)
KNOWN = ["stick-pass-through", "hang-snatch", "high-hang-snatch"]


@pytest.fixture(autouse=True)
def _library(monkeypatch: pytest.MonkeyPatch, catalogue: Path) -> None:
    """Every question is asked of the shipped library."""
    monkeypatch.setattr("kb.commands.asked.catalogue_of", lambda *_: read.open_catalogue(catalogue))
    monkeypatch.setenv("COLUMNS", "80")


@pytest.fixture
def no_solver(monkeypatch: pytest.MonkeyPatch) -> None:
    """The extra isn't installed; fewer orders are tried than usual, as no test hangs on the last of them."""
    monkeypatch.setattr("kb.ask.class_.greedy.TRIES", 2_000)
    for name in [each for each in sys.modules if each.startswith("kb.solve.")]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setitem(sys.modules, "ortools", None)
    monkeypatch.setitem(sys.modules, "ortools.sat.python", None)


def ask(*arguments: str, code: int = 0) -> Result:
    """Run the command; it must exit with `code`."""
    result = CliRunner().invoke(drillpath, ["class", *arguments])
    assert result.exit_code == code, (result.output, result.exception)
    return result


def written(folder: Path, count: int = 4, **more: object) -> Path:
    """A class of so many, of every kind in turn."""
    people = [{"name": f"L{n}", **FAULTS[n % len(FAULTS)]} for n in range(count)]
    asked = {
        "lift": "snatch",
        "minutes": 60,
        "known": KNOWN,
        "gear": {"bar": 6, "stick": 14},
        "lifters": people,
        **more,
    }
    file = folder / "class.yaml"
    file.write_text(json.dumps(asked), "utf-8")
    return file


@pytest.fixture(scope="module")
def demo(catalogue: Path, tmp_path_factory: pytest.TempPathFactory) -> tuple[str, str]:
    """The demo's answer for programs, and the sheet written with it; asked once."""
    sheet = tmp_path_factory.mktemp("demo") / "class.html"
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("kb.commands.asked.catalogue_of", lambda *_: read.open_catalogue(catalogue))
        said = ask("--demo", "--json", "--sheet", str(sheet), "--paper", "letter")
    assert "Sheet written" in said.stderr
    return said.stdout, sheet.read_text("utf-8")


def test_the_demos_idle_time_is_proved_least(demo: tuple[str, str]) -> None:
    """Every rule is kept, and what is proved of the second aim is said."""
    answer = json.loads(demo[0])
    assert broken(answer, DEMO) == []
    assert answer["optimal"]
    assert answer["gap"] == 0
    assert answer["idle_s"] == 540
    assert 1 <= answer["drills_at_once"]["proved_least"] <= answer["drills_at_once"]["most"]
    assert len(answer["lifters"]) == 12
    assert {use["item"]: use["have"] for use in answer["gear"]} == {"bar": 6, "bench": 4, "stick": 14}


def test_the_demo_on_a_terminal() -> None:
    """The answer first, then groups, the hall, the coaches, a card each, gear, and the usual cautions."""
    said = ask("--demo").stdout
    assert said.startswith("Kestrel Road, Tuesday evening")
    assert "12 lifters, 60 min, 2 coaches" in said.splitlines()[0]
    assert "All waiting added up: 9 min" in said
    assert "that is proved" in said
    headings = [
        "Who works together",
        "The hall, minute by minute",
        "Before it starts",
        "Coach 1",
        "Coach 2",
        "Ada:",
        "Gear",
    ]
    places = [said.index(f"\n{heading}") for heading in headings]
    assert places == sorted(places)
    assert "First, how to miss." in said
    assert "Stop on pain" in said
    assert "No qualified coach has reviewed" in said
    assert max(map(len, said.splitlines())) <= 80


def test_the_demo_on_paper(demo: tuple[str, str]) -> None:
    """One file, without script, with a card for everyone; the answer for programs can be had beside it."""
    answer, page = json.loads(demo[0]), demo[1]
    assert "`" not in page
    assert page.count('<article class="card">') == 12
    assert "size: letter" in page
    assert "<script" not in page
    assert "default-src 'none'" in page
    assert "Stop on pain" in page
    assert all(each["name"] in page for each in answer["lifters"])


@pytest.mark.usefixtures("no_solver")
def test_without_a_solver_the_plan_is_good_and_says_it_is_unproved(tmp_path: Path) -> None:
    """And keeps every rule all the same."""
    answer = json.loads(ask("--demo", "--json").stdout)
    assert broken(answer, DEMO) == []
    assert not answer["optimal"]
    assert answer["gap"] is None
    assert answer["idle_s"] >= 540
    said = ask(str(written(tmp_path, 6, coaches=3, gear={"bar": 4, "stick": 14}))).stdout
    assert "is not known" in said
    assert "drillpath[class]" in said


@pytest.mark.usefixtures("no_solver")
def test_without_a_solver_nobody_waiting_is_still_the_least(tmp_path: Path) -> None:
    """Less than nothing can't be waited."""
    file = written(tmp_path, 1)
    answer = json.loads(ask(str(file), "--json").stdout)
    assert (answer["optimal"], answer["idle_s"]) == (True, 0)
    assert broken(answer, file) == []
    assert "Nobody waits at all" in ask(str(file)).stdout


@pytest.mark.usefixtures("no_solver")
def test_without_a_solver_what_is_not_found_is_not_called_impossible(tmp_path: Path) -> None:
    """Unless somebody's own drills are too long."""
    file = written(tmp_path, 6, coaches=3, gear={"bar": 1, "stick": 14})
    assert "doesn't prove that there is none" in ask(str(file), code=1).stderr
    file = written(tmp_path, 1, minutes=12)
    assert "more than the class has" in ask(str(file), code=1).stderr


@pytest.mark.parametrize(
    "gear", [{"bar": 1, "stick": 14}, pytest.param({"bar": 2, "stick": 1}, marks=pytest.mark.exhaustive)]
)
def test_what_is_short_is_said_and_is_true(gear: dict[str, int], tmp_path: Path) -> None:
    """With as many more of each thing named it can be planned, with one less it can't."""
    asked: dict[str, object] = {"coaches": 3, "gear": gear, "most_wait_s": 180, "minutes": 60}
    file = written(tmp_path, 6, **asked)
    answer = json.loads(ask(str(file), "--json", code=1).stdout)
    assert (answer["version"], answer["lifters"]) == (1, [])
    assert answer["short"]
    for short in answer["short"]:
        less = 30 if short["what"] == "wait" else 1
        for by, code in ((short["by"], 0), (short["by"] - less, 1)):
            field = {"minutes": "minutes", "coaches": "coaches", "wait": "most_wait_s"}.get(short["what"])
            more = {field: asked[field] + by} if field else {"gear": {**gear, short["what"]: gear[short["what"]] + by}}  # type: ignore[operator]
            file = written(tmp_path, 6, **{**asked, **more})
            said = ask(str(file), "--json", code=code)
            assert code == 1 or broken(json.loads(said.stdout), file) == []
    said = ask(str(written(tmp_path, 6, **asked)), code=1)
    assert "it can be planned, with less it can't" in said.stderr
    assert ("By hand it can be done" in said.stdout) == (sum(gear.values()) < 6)


PRESS = {"fault": "snatch-press-out", "cause": "late-turnover"}


def _six(folder: Path, *heavy: int, **more: object) -> Path:
    """Six with one fault, some with a day's weight."""
    people = [{"name": f"L{n}", **PRESS, **({"weight_kg": 30} if n in heavy else {})} for n in range(6)]
    return written(folder, lifters=people, **{"coaches": 1, "minutes": 40, **more})


@pytest.mark.parametrize("solver", [True, False])
def test_where_one_bar_doesn_t_go_round_the_others_do_without(
    solver: bool, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    """A plan comes out as it does with no bar in the hall; who does without is said, first, with the reason."""
    if not solver:
        request.getfixturevalue("no_solver")
    file = _six(tmp_path, gear={"bar": 1, "stick": 6})
    answer = json.loads(ask(str(file), "--json").stdout)
    assert broken(answer, file) == []
    leave = [each["name"] for each in answer["lifters"] if each["without"] == ["bar"]]
    assert 4 <= len(leave) <= 6
    said = " ".join(ask(str(file)).stdout.split())
    assert "without the bar: no plan was found in which 1 bar goes round 6 lifters in 40 min with no wait over" in said
    assert json.loads(ask(str(_six(tmp_path, gear={"bar": 0, "stick": 6})), "--json").stdout)["lifters"]


def test_as_many_as_can_stay_at_the_bars(tmp_path: Path) -> None:
    """Ten, five bars, two faults, three minutes' wait at most: that doesn't go round, so one whole chain keeps them."""
    faults = (("clean-low-elbows", "late-elbows"), ("contact-too-low", "jumps-from-thigh"))
    people = [{"name": f"L{n}", "fault": faults[n % 2][0], "cause": faults[n % 2][1]} for n in range(10)]
    gear = {"bar": 5, "stick": 8}
    file = written(tmp_path, lifters=people, lift="clean", minutes=40, coaches=1, known=[], gear=gear, most_wait_s=180)
    answer = json.loads(ask(str(file), "--json").stdout)
    assert broken(answer, file) == []
    assert [each["without"] for each in answer["lifters"]] == [[], ["bar"]] * 5
    assert [use["peak"] for use in answer["gear"] if use["item"] == "bar"] == [5]
    said = " ".join(ask(str(file)).stdout.split())
    assert "L1, L3, L5, L7 and L9 do without the bar: no plan was found in which 5 bars go round 10 lifters" in said


def test_a_longer_wait_comes_before_doing_without(tmp_path: Path) -> None:
    """The same ten where the file doesn't say how long they may wait: all keep the bars, and the wait is said."""
    faults = (("clean-low-elbows", "late-elbows"), ("contact-too-low", "jumps-from-thigh"))
    people = [{"name": f"L{n}", "fault": faults[n % 2][0], "cause": faults[n % 2][1]} for n in range(10)]
    gear = {"bar": 5, "stick": 8}
    file = written(tmp_path, lifters=people, lift="clean", minutes=40, coaches=1, known=[], gear=gear)
    answer = json.loads(ask(str(file), "--json").stdout)
    assert broken(answer, file) == []
    assert not any(each["without"] for each in answer["lifters"])
    said = " ".join(ask(str(file)).stdout.split())
    assert "nobody waits over 3 min at a time, so they are up to 5 min" in said


def test_whoever_has_a_weight_keeps_the_bar(tmp_path: Path) -> None:
    """Though listed last; the others leave it to them."""
    file = _six(tmp_path, 5, gear={"bar": 1, "stick": 6}, minutes=60)
    answer = json.loads(ask(str(file), "--json").stdout)
    assert broken(answer, file) == []
    assert answer["lifters"][5]["without"] == []
    assert [each["without"] for each in answer["lifters"][1:5]] == [["bar"]] * 4


def test_where_bars_go_round_nobody_does_without(demo: tuple[str, str]) -> None:
    """And nothing is said of it."""
    assert all(each["without"] == [] for each in json.loads(demo[0])["lifters"])
    assert "without the bar" not in demo[1]


def test_a_class_too_short_says_by_how_much(tmp_path: Path) -> None:
    """And whose drills they are; what doesn't fit of a chain is left for another day where that helps."""
    answer = json.loads(ask(str(written(tmp_path, 1, minutes=17)), "--json", code=1).stdout)
    by = next(short["by"] for short in answer["short"] if short["what"] == "minutes")
    assert "L0's drills alone don't fit" in answer["why"]
    assert ask(str(written(tmp_path, 1, minutes=16 + by)), code=1)
    file = written(tmp_path, 1, minutes=17 + by)
    answer = json.loads(ask(str(file), "--json").stdout)
    assert broken(answer, file) == []
    assert answer["lifters"][0]["later"] > 0
    assert "another day" in ask(str(file)).stdout


def test_a_hall_without_what_somebody_needs(tmp_path: Path) -> None:
    """Says whom, where they stand in the file, and what is missing."""
    said = ask(str(written(tmp_path, gear={"bar": 0, "stick": 4})), code=1).stderr
    assert "class.yaml, line 1: L0 can't be given a chain in this hall: 40 kg needs a bar" in said
    said = ask(str(written(tmp_path, kit="home", gear={"broom": 0})), code=1).stderr
    assert "can't be given a chain in this hall" in said


def test_a_question_that_cant_be_understood(tmp_path: Path) -> None:
    """A file or the demo; a file that is there; a sheet that is a page."""
    assert "name a class file, or ask for --demo" in ask(code=2).stderr.lower()
    assert "--demo" in ask("--demo", str(DEMO), code=2).stderr
    assert "The class file" in ask(str(tmp_path / "none.yaml"), code=2).stderr
    assert "must end in .html" in ask("--demo", "--sheet", "class.txt", code=2).stderr
    file = written(tmp_path, gear={"bar": 1.5})
    assert "`bar`: 1.5 of a thing can't be had" in ask(str(file), code=2).stderr


def test_a_search_without_an_end_falls_back(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """On a plan built in plain Python, or on saying that none was found; neither speaks of installing anything."""
    monkeypatch.setattr("kb.solve.rotation.best_plan", _undecided)
    monkeypatch.setattr("kb.ask.class_.greedy.TRIES", 2_000)
    said = ask(str(written(tmp_path, 6, coaches=3, gear={"bar": 5, "stick": 14}))).stdout
    assert "is not known" in said
    assert "drillpath[class]" not in said
    said = ask(str(written(tmp_path, 6, coaches=3, gear={"bar": 1, "stick": 14})), code=1).stderr
    assert "doesn't prove that there is none" in said
    assert "drillpath[class]" not in said


def _undecided(*_: object) -> None:
    from kb.solve.rotation import Undecided

    raise Undecided


def test_where_nothing_more_would_do_that_is_said(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """And a hall in which somebody can't be given a chain is no help."""

    def nothing(_: object, again: Callable[[str, int], list[object]]) -> tuple[()]:
        assert again("bar", -1) == []
        assert again("bar", 9)
        return ()

    monkeypatch.setattr("kb.solve.short.shortages", nothing)
    said = ask(str(written(tmp_path, 6, coaches=3, gear={"bar": 1, "stick": 14})), code=1).stderr
    assert "no plan that keeps every rule. No one thing more was found that would give it one." in said


def test_more_chains_than_coaches_can_run(tmp_path: Path) -> None:
    """Where they can't be joined, how many coaches it takes is said."""
    said = ask(str(written(tmp_path, 6, coaches=1, minutes=40)), code=1).stderr
    assert "different chains, and 1 coach can run 2 at once" in said
    assert "more coach" in said


def test_one_coach_and_unlike_chains_are_joined_or_refused(tmp_path: Path) -> None:
    """Those that share most are put on one chain, so that a coach runs two at once and no more."""
    file = written(tmp_path, 6, coaches=1, minutes=120, known=[*KNOWN, "overhead-squat"])
    answer = json.loads(ask(str(file), "--json").stdout)
    assert broken(answer, file) == []
    assert len({each["group"] for each in answer["lifters"]}) == 2


@pytest.mark.exhaustive
def test_forty_lifters_are_planned_in_twenty_seconds(tmp_path: Path) -> None:
    """A whole process, its start included; the gap is said."""
    file = written(tmp_path, 40, gear={"bar": 18, "stick": 30}, coaches=4, minutes=75)
    began = time.perf_counter()
    done = subprocess.run(
        [sys.executable, "-c", "from kb.cli import main; main()", "class", str(file), "--json"],
        capture_output=True,
        text=True,
        check=True,
    )
    took = time.perf_counter() - began
    answer = json.loads(done.stdout)
    assert broken(answer, file) == []
    assert answer["gap"] is not None
    assert took < 20, took


def _bars_apart(answer: dict[str, Any]) -> None:
    for each in answer["lifters"]:
        for slot in each["slots"]:
            if slot["as"] == "work" and slot["shares"]:
                slot.update(shares=[], gear=["bar", "discs", "headroom", "drop-floor"])


def _one_coach(answer: dict[str, Any]) -> None:
    for duty in answer["coaches"]:
        duty["coach"] = 1


def _swapped(answer: dict[str, Any]) -> None:
    work = [slot for slot in slots(answer) if slot["as"] in ("work", "check")]
    work[0]["drill"], work[2]["drill"] = work[2]["drill"], work[0]["drill"]


def slots(answer: dict[str, Any]) -> list[dict[str, Any]]:
    """The first lifter's."""
    found: list[dict[str, Any]] = answer["lifters"][0]["slots"]
    return found


SPOILT: dict[str, Callable[[dict[str, Any]], object]] = {
    "overlap": lambda answer: slots(answer)[1].update(start_s=slots(answer)[0]["start_s"]),
    "late": lambda answer: slots(answer)[-1].update(end_s=9000),
    "idle": lambda answer: answer.update(idle_s=570),
    "wait": lambda answer: slots(answer).pop(1),
    "order": _swapped,
    "bars": _bars_apart,
    "load": lambda answer: [s.update(gear=["stick"], shares=[]) for s in slots(answer) if s["as"] == "work"],
    "shown": lambda answer: slots(answer)[0].update(end_s=slots(answer)[0]["end_s"] + 30),
    "coach": _one_coach,
    "unseen": lambda answer: answer.update(coaches=[d for d in answer["coaches"] if d["does"] == "show"]),
    "quick": lambda answer: slots(answer)[1].update(end_s=slots(answer)[1]["end_s"] - 60),
    "peak": lambda answer: answer["gear"][0].update(peak=answer["gear"][0]["peak"] + 1),
    "group": lambda answer: answer["lifters"][0].update(group=answer["lifters"][11]["group"]),
    "idler": lambda answer: answer["lifters"][8].update(more=None),
    "more weight": lambda answer: answer["lifters"][3]["more"].update(load="working"),
    "more early": lambda answer: answer["lifters"][3]["more"].update(start_s=600),
    "more rounds": lambda answer: answer["lifters"][3]["more"].update(rounds=90),
    "missing": lambda answer: answer["lifters"].pop(),
    "without": lambda answer: answer["lifters"][0].update(without=["stick"]),
}


@pytest.mark.parametrize("how", SPOILT)
def test_the_checker_can_fail(how: str, demo: tuple[str, str]) -> None:
    """Each way of spoiling the demo's answer is seen."""
    answer = json.loads(demo[0])
    assert broken(answer, DEMO) == []
    SPOILT[how](answer)
    assert broken(answer, DEMO) != []


@pytest.mark.parametrize("more", ["", ", discs: plenty, drop-floor: plenty"])
def test_a_bar_without_discs_or_a_floor_for_them_is_a_light_bar(tmp_path: Path, more: str) -> None:
    """It is begun from mid-shin and lowered by hand; nobody is left with a stick while bars stand by."""
    file = tmp_path / "class.yaml"
    file.write_text(
        "lift: snatch\nminutes: 50\nkit: school-hall\ngear: {bar: 3, stick: 12" + more + "}\nlifters:\n"
        "  - {name: Ada, holds: [full-snatch]}\n  - {name: Bram, holds: [full-snatch]}\n",
        "utf-8",
    )
    said = CliRunner().invoke(drillpath, ["class", str(file)])
    assert said.exit_code == 0
    assert "light bar" in said.stdout


HANG = ["stick-pass-through", "overhead-hold"]


def test_who_practises_hands_the_bar_on_when_the_others_have_learnt(tmp_path: Path) -> None:
    """Two of many years have two bars until the second half; then the seven, too many for them, have one by turns."""
    lifters: list[Any] = [{"name": f"Y{n}", "holds": ["full-snatch"], "bar": "light"} for n in range(2)]
    lifters += [{"name": f"H{n}", "holds": HANG} for n in range(7)]
    gear = {"bar": 2, "stick": "plenty", "discs": "plenty", "drop-floor": "plenty"}
    asked = {"lift": "snatch", "minutes": 50, "gear": gear, "today": ["hang-power-snatch"], "lifters": lifters}
    file = tmp_path / "class.yaml"
    file.write_text(json.dumps(asked), "utf-8")
    said = " ".join(ask(str(file)).stdout.split())
    answer = json.loads(ask(str(file), "--json").stdout)
    learnt = max(slot["end_s"] for each in answer["lifters"] for slot in each["slots"])
    assert learnt >= 25 * 60
    assert f"1 bar that nobody uses goes round from {learnt // 60}:{learnt % 60:02} to" in said
    assert "Y1 calls the standard." in said
    assert {each["bar_turn"]["drill"] for each in answer["lifters"][2:]} == {"thigh-slide"}  # slow, not the snatch
    assert "Free at the end" not in said
    assert [each["more"]["end_s"] for each in answer["lifters"][:2]] == [50 * 60, learnt]


def test_bars_that_stand_by_go_round_and_minutes_left_go_on_down_the_path(tmp_path: Path) -> None:
    """Sixteen learn a pull with sticks: what follows it is next; as many bars as give all a turn go round."""
    lifters = [{"name": f"S{n}", "holds": ["front-squat", "air-squat"]} for n in range(16)]
    gear = {"training-bar": 3, "stick": "plenty", "discs": 0}
    asked = {
        "lift": "clean",
        "minutes": 40,
        "kit": "school-hall",
        "gear": gear,
        "today": "hang-pull",
        "lifters": lifters,
    }
    file = tmp_path / "class.yaml"
    file.write_text(json.dumps(asked), "utf-8")
    said = " ".join(ask(str(file)).stdout.split())
    assert "As there is time: after that Hang clean" in said
    assert "2 training bars that nobody uses go round from 29:30 to" in said
    assert "Stay with the bars, one round each in this order, 2 at a time: S0," in said
    assert "(Pull from the knee)." in said  # what was named for today, as a training bar is light
