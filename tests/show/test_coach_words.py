"""What changed, how much and how long, as a coach would say it."""

import pytest
from handmade import drill
from small_answers import small_shelf

from kb.dials import Change
from kb.show.coach_words import changed, dosed, duration, largest_change, moved_on, plain_markdown
from kb.show.setting import Setting
from kb.terms import Dose, LiftId, Speed, Standard

CLEAN, JERK = small_shelf("clean").lift, small_shelf("jerk").lift
BOTH = JERK._replace(id=LiftId("clean-and-jerk"), timeline=(*CLEAN.timeline, *JERK.timeline))

SAID = [
    ("reach", "extension-receive", "hip-receive", "from the hip"),
    ("reach", "hip-stand", "start-stand", "from the floor"),
    ("reach", "start-knee", "start-hip", "on to the hip"),
    ("reach", "start-extension", "start-stand", "the whole lift"),
    ("reach", "knee-hip", "start-stand", "the whole lift"),
    ("reach", "knee-hip", "start-extension", "from the floor"),
    ("reach", "hip", "knee-receive", "on to the catch"),
    ("reach", "start-hip", "start-knee", "only to the knee"),
    ("reach", "start-stand", "knee-stand", "from the knee"),
    ("reach", "start-knee", "hip-extension", "from the hip to full height"),
    ("reach", "start-knee", "hip", "at the hip only"),
    ("reach", "receive-stand", "stand", "standing only"),
    ("leaves_out", "nothing", "hip, knee", "leaves out the hip and the knee"),
    ("leaves_out", "hip", "nothing", "takes in the hip"),
    ("speed", "held", "slow", "done slowly"),
    ("speed", "slow", "paused", "with a pause"),
    ("load", "none", "stick", "with a stick"),
    ("load", "stick", "light", "light weight"),
    ("catch", "power", "full", "caught low"),
    ("catch", "full", "none", "no catch"),
    ("aid", "helped", "free", "without help"),
    ("aid", "free", "helped", "helped by wall and hand"),
    ("stage", "join", "segment", "a smaller part again"),
]


@pytest.mark.parametrize(("dial", "before", "after", "said"), SAID)
def test_a_change_is_said_in_a_few_words(dial: str, before: str, after: str, said: str) -> None:
    """None of them ours: no dial, no notch."""
    helped = drill("a", aid=("wall", "hand"))
    assert changed(Change(dial, before, after, 1), CLEAN, helped) == said


def test_the_jerk_has_a_catch_of_its_own() -> None:
    """Its full depth is the split; a clean before a jerk is caught in a squat for all that."""
    deeper, split = Change("catch", "power", "full", 1), ("rack", "recovered")
    assert changed(deeper, JERK, drill("a", reach={JERK.id: split})) == "caught in the split"
    assert changed(deeper, BOTH, drill("a", reach={JERK.id: split})) == "caught in the split"
    assert changed(deeper, BOTH, drill("a", reach={CLEAN.id: ("start", "stand")})) == "caught low"


def test_one_change_is_said_beside_a_bar() -> None:
    """The largest, which comes first; nothing where nothing changed."""
    turned = (Change("load", "stick", "light", 4), Change("speed", "slow", "paused", 1))
    assert largest_change(turned, CLEAN, drill("a")) == "light weight"
    assert largest_change((), CLEAN, drill("a")) == ""


def test_a_reach_that_is_no_reach_is_refused() -> None:
    """A point that the lift lacks isn't guessed at."""
    with pytest.raises(ValueError, match="rack-dip"):
        changed(Change("reach", "rack-dip", "start-hip", 1), CLEAN, drill("a"))


@pytest.mark.parametrize(
    ("dose", "speed", "work", "said"),
    [
        (Dose(rounds=4, reps=3, tempo=(2, 0, 1, 0), rest_s=50), Speed.SLOW, True, "4 x 3 at 2-0-1-0, rest 50 s"),
        (Dose(rounds=4, reps=3, tempo=(2, 0, 1, 0), rest_s=50), Speed.FULL, True, "4 x 3, rest 50 s"),
        (Dose(rounds=4, reps=3, rest_s=50), Speed.FULL, False, "1 x 3"),
        (Dose(rounds=3, hold_s=20, sides=2), Speed.HELD, True, "3 x 20 s held, each side"),
        (Dose(rounds=2, reps=5, hold_s=10), Speed.SLOW, True, "2 x 5, then hold 10 s"),
        (Dose(), Speed.FULL, True, ""),
        (Dose(rounds=10, reps=2, every_s=120), Speed.FULL, True, "10 x 2, one every 2 min"),
        (Dose(rounds=6, reps=1, every_s=60), Speed.FULL, True, "6 x 1, one every minute"),
        (Dose(rounds=6, hold_s=10, every_s=45), Speed.HELD, True, "6 x 10 s held, one every 45 s"),
        (Dose(rounds=10, reps=2, every_s=120), Speed.FULL, False, "1 x 2"),
        (
            Dose(good=30, reps=3, rest_s=75),
            Speed.FULL,
            True,
            "30 good ones, sets of 3 at most (about 38 tries), rest 75 s",
        ),
        (Dose(good=2, success=100, reps=3, rest_s=75), Speed.FULL, True, "2 good ones, sets of 3 at most"),
        (Dose(good=30, reps=3, rest_s=75), Speed.FULL, False, "1 x 3"),
        (Dose(good=4, success=100, reps=3, rest_s=75), Speed.FULL, False, "1 x 2"),
    ],
)
def test_how_much_is_said_as_on_a_board(dose: Dose, speed: Speed, work: bool, said: str) -> None:
    """Rounds and repetitions; a check is one round; the tempo only where it is what is done."""
    written = dosed(drill("a", dose=dose, speed=speed), Setting(), work=work)
    assert written.replace("\N{NO-BREAK SPACE}", " ") == said


def test_fine_characters_have_a_sign_for_times() -> None:
    """The multiplication sign."""
    assert "\N{MULTIPLICATION SIGN}" in dosed(drill("a", dose=Dose(rounds=3, reps=2)), Setting(fine=True))


def test_times_standards_and_marks() -> None:
    """Minutes are rounded up; a standard is its count and what is seen; Markdown's marks are taken off."""
    assert [duration(59), duration(60), duration(61)] == ["59 s", "1 min", "2 min"]
    assert moved_on(Standard(count=3, of=5, seen="heels down")) == "3 of 5: heels down"
    assert plain_markdown("a **bold** `word`") == "a bold word"
