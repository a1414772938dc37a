"""What measurements say of a fault's causes: which moves up, which is ruled out, and why; in chains and sessions."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from small_answers import built

from kb.ask.by_screen import Verdict, by_screen
from kb.body.tape import Tape
from kb.commands.group import drillpath
from kb.make.library import load
from kb.terms import FaultId, LiftId

SHIPPED = load(Path(__file__).parents[2])
SUPPLE = Tape(175, wall=14, reach=0, elbows=-8, hinge=95, squat=-8)


def judged(fault: str, lift: str, tape: Tape) -> dict[str, Verdict]:
    """The verdicts of the shipped library, in their order."""
    found = by_screen(
        SHIPPED.faults[FaultId(fault)],
        SHIPPED.lifts[LiftId(lift)],
        tape,
        positions=SHIPPED.positions,
        drills=SHIPPED.drills.values(),
    )
    return {verdict.cause.id: verdict for verdict in found}


ASKED = [
    (fault.id, lift)
    for fault in SHIPPED.faults.values()
    for lift in fault.lifts
    if any(cause.kind == "mobility" for cause in fault.causes)
]


@pytest.mark.parametrize(("fault", "lift"), ASKED)
def test_every_cause_stays_and_only_stiffness_moves(fault: str, lift: str) -> None:
    """Whatever was measured; of what didn't move the commonest is still first."""
    order = [cause.id for cause in SHIPPED.faults[FaultId(fault)].causes]
    for tape in (Tape(175), SUPPLE, Tape(175, wall=2, reach=15, elbows=14, hinge=115, squat=12)):
        found = judged(fault, lift, tape)
        assert sorted(found) == sorted(order)
        assert all(verdict.cause.kind == "mobility" for verdict in found.values() if verdict.moved)
        still = [cause for cause, verdict in found.items() if not verdict.moved]
        assert still == [cause for cause in order if cause in still]
        assert [verdict.moved for verdict in found.values()] == sorted(
            (verdict.moved for verdict in found.values()), key=["up", "", "down"].index
        )


@pytest.mark.parametrize(("fault", "lift"), ASKED)
def test_with_nothing_measured_nothing_moves(fault: str, lift: str) -> None:
    """A height says nothing of joints."""
    assert not any(verdict.moved for verdict in judged(fault, lift, Tape(175)).values())


@pytest.mark.parametrize(("fault", "lift"), ASKED)
def test_a_supple_lifter_has_no_stiffness_first(fault: str, lift: str) -> None:
    """Everything measured and good: what is mobility is ruled out, or the tape doesn't show it."""
    for verdict in judged(fault, lift, SUPPLE).values():
        assert verdict.moved != "up"


def test_a_stiff_ankle_is_first_where_heels_lift_and_last_when_it_is_free() -> None:
    """Knee to wall of 4 and of 12 cm."""
    stiff = judged("heels-lift-in-catch", "snatch", Tape(175, wall=4))
    assert next(iter(stiff)) == "stiff-ankles"
    assert (stiff["stiff-ankles"].moved, stiff["stiff-ankles"].joint) == ("up", "ankle")
    assert stiff["stiff-ankles"].position == "snatch-receive"
    assert stiff["stiff-ankles"].lacks
    free = judged("heels-lift-in-catch", "snatch", Tape(175, wall=12))
    assert list(free)[-1] == "stiff-ankles"
    assert free["stiff-ankles"].moved == "down"
    assert free["stiff-ankles"].degrees == pytest.approx(39.9, abs=0.1)


def test_an_ankle_that_only_leans_the_dip_moves_up_too() -> None:
    """The dip can be reached, tipping forward: that is the fault."""
    verdict = judged("jerk-dips-forward", "jerk", Tape(175, wall=3))["stiff-ankles"]
    assert (verdict.moved, verdict.lacks, verdict.position) == ("up", False, "jerk-dip")
    assert verdict.degrees > 3


def test_two_stiff_joints_stand_by_what_they_lack() -> None:
    """What lacks most is tried first."""
    order = list(judged("bar-forward-overhead", "snatch", Tape(175, wall=3, reach=3)))
    assert order[:2] == ["stiff-ankles", "stiff-shoulders"]
    order = list(judged("bar-forward-overhead", "snatch", Tape(175, wall=6, reach=14)))
    assert order[:2] == ["stiff-shoulders", "stiff-ankles"]


def test_the_joint_goes_by_where_the_bar_is() -> None:
    """Stiff wrists and lats show in the rack, stiff shoulders overhead, stiff hips in the pull as the hinge."""
    assert judged("clean-low-elbows", "clean", Tape(175, elbows=16))["stiff-wrists-lats"].joint == "rack"
    assert judged("snatch-press-out", "snatch", Tape(175, reach=16))["stiff-shoulders"].joint == "shoulder"
    assert judged("back-rounds-off-floor", "snatch", Tape(175, hinge=120, wall=8))["stiff-hips"].joint == "hinge"


def test_what_would_have_to_be_measured_is_said() -> None:
    """An ankle nobody measured stays where it was, by name; a back hip has no test at all."""
    assert judged("heels-lift-in-catch", "snatch", Tape(175, reach=3))["stiff-ankles"] == Verdict(
        SHIPPED.faults[FaultId("heels-lift-in-catch")].cause("stiff-ankles"), joint="ankle"
    )
    assert judged("jerk-back-leg-locks", "jerk", SUPPLE)["stiff-hip-flexors"].joint == ""


# the command, on the small library


def ask(*arguments: str, code: int = 0) -> Result:
    """Run the command; it must exit with `code`."""
    result = CliRunner().invoke(drillpath, list(arguments), env={"DRILLPATH_LIBRARY": str(built()), "COLUMNS": "80"})
    assert result.exit_code == code, (result.output, result.exception)
    return result


@pytest.fixture
def lifter(tmp_path: Path) -> str:
    """A file of measurements: ankles stiff, the rest good."""
    path = tmp_path / "lifter.yaml"
    path.write_text("stature: 175\nwall: 2\nreach: 0\nelbows: -5\nhinge: 95\n")
    return str(path)


def _fault_with_ankles() -> tuple[str, str]:
    small = load(Path(__file__).parents[1] / "data" / "small")
    return next(
        (fault.id, fault.lifts[0])
        for fault in small.faults.values()
        for cause in fault.causes
        if cause.kind == "mobility"
    )


def test_a_chain_begins_with_what_the_measurements_say(lifter: str) -> None:
    """Text and JSON have every cause with the reason; a cause that was named stays."""
    fault, lift = _fault_with_ankles()
    text = ask("chain", fault, "--lift", lift, "--screen", lifter).stdout
    assert "Causes by the measurements" in text
    assert "no diagnosis" in " ".join(text.split())
    assert max(map(len, text.splitlines())) <= 80
    answer = json.loads(ask("chain", fault, "--lift", lift, "--screen", lifter, "--json").stdout)
    assert answer["cause"] == answer["screen"][0]["cause"]
    other = answer["screen"][-1]["cause"]
    named = json.loads(ask("chain", fault, "--lift", lift, "--screen", lifter, "--json", "--cause", other).stdout)
    assert named["cause"] == other
    assert "screen" not in json.loads(ask("chain", fault, "--lift", lift, "--json").stdout)


def test_a_session_says_which_cause_it_took(lifter: str) -> None:
    """On standard error, beside the answer; a path has no causes."""
    fault, lift = _fault_with_ankles()
    said = ask("session", "--fault", fault, "--lift", lift, "--screen", lifter, "--minutes", "60").stderr
    assert "By the measurements, " in said
    refused = ask("session", "--path", lift, "--screen", lifter, "--minutes", "60", code=2)
    assert "--screen goes with --fault" in refused.stderr


def test_a_file_that_is_none_is_refused(tmp_path: Path) -> None:
    """Exit 2 with the file's name."""
    fault, lift = _fault_with_ankles()
    assert "can't be read" in ask("chain", fault, "--lift", lift, "--screen", str(tmp_path / "x"), code=2).stderr
