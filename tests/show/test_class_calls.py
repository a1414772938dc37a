"""What is called to all who do a drill together: held, counted, or at full speed; from four lifters on."""

import pytest
from class_told import drill, planned

from kb.ask.class_.slot import Duty
from kb.show.class_calls import call_of, calls_said
from kb.show.class_sheet import class_sheet
from kb.show.class_text import class_text
from kb.show.class_words import duty_said
from kb.show.setting import Setting
from kb.terms import Catch, Dose, Drill, ItemId, LiftId, Load, Speed, Stage

BAR, STAND = ItemId("bar"), drill("stand")
FLOOR = {LiftId("clean"): ("start", "knee")}


@pytest.mark.parametrize(
    ("told", "said"),
    [
        (STAND._replace(dose=Dose(rounds=3, hold_s=20)), "Set. Hold, 20 s. Rest."),
        (STAND._replace(speed=Speed.SLOW, dose=Dose(reps=4, tempo=(3, 1, 2, 0))), "Down, 2, 3. Hold. Up, 2."),
        (STAND._replace(speed=Speed.PAUSED, dose=Dose(reps=4, tempo=(0, 2, 1, 0))), "Hold, 2. Up."),
        (
            STAND._replace(speed=Speed.SLOW, reach=FLOOR, dose=Dose(reps=4, tempo=(3, 1, 4, 1))),
            "Up, 2, 3, 4. Hold. Down, 2, 3. Hold.",
        ),
        (STAND._replace(stage=Stage.PREPARE, dose=Dose(reps=8, tempo=(2, 1, 2, 0))), "Out, 2. Hold. Back, 2."),
        (STAND._replace(speed=Speed.FULL, catch=Catch.FULL, dose=Dose(reps=2)), "Ready. Go. Hold 2. Down."),
        (STAND._replace(speed=Speed.FULL, dose=Dose(reps=2, tempo=(2, 1, 1, 0))), "Ready. Go. Down."),
        (STAND._replace(speed=Speed.FULL, dose=Dose(reps=2, hold_s=5)), "Ready. Go. Down. Hold, 5 s. Rest."),
    ],
    ids=["held", "slow", "paused", "off the floor", "preparing", "caught", "not caught", "then held"],
)
def test_the_words_for_one(told: Drill, said: str) -> None:
    """From the drill's speed and dose; a phase that takes no time isn't called."""
    assert call_of(told) == said


@pytest.mark.parametrize(
    ("dose", "work", "said"),
    [
        (Dose(rounds=3, reps=5, rest_s=30), True, '"Ready. Go. Down." 5 times; 3 rounds, rest 30 s.'),
        (Dose(rounds=3, reps=5, rest_s=30), False, '"Ready. Go. Down." 5 times.'),
        (Dose(rounds=3, reps=1, sides=2), True, '"Ready. Go. Down.", each side; 3 rounds.'),
        (Dose(rounds=4, reps=2, every_s=60), True, '"Ready. Go. Down." 2 times; 4 rounds, one every 60 s.'),
        (Dose(reps=1), True, '"Ready. Go. Down."'),
    ],
    ids=["work", "a check", "each side", "by the clock", "one"],
)
def test_how_often_and_how_many_rounds(dose: Dose, work: bool, said: str) -> None:
    """Of a check one."""
    plan = planned(4, STAND._replace(speed=Speed.FULL, dose=dose), work=work)
    assert calls_said(plan) == [("10:00", f"Stand: {said}")]


def test_it_is_called_to_four_and_not_to_three() -> None:
    """Each drill once, in the order in which they come."""
    assert calls_said(planned(3, STAND)) == []
    said = calls_said(planned(4, STAND, drill("sit"), STAND))
    assert [each[1].partition(":")[0] for each in said] == ["Stand", "Sit"]


def test_while_every_coach_is_with_somebody_else_one_of_them_calls() -> None:
    """A second coach is free for it; who practises what they hold isn't called at all."""
    plan = planned(4, STAND)
    duty = Duty(0, 630, 690, "watch", drill("sit"), ("L9",))
    ((_, said),) = calls_said(plan._replace(duties=(duty,)))
    assert said.startswith('Stand (one of them calls): "')
    later = duty._replace(start_s=plan.end_s, end_s=plan.end_s + 60)
    assert "one of them" not in calls_said(plan._replace(duties=(later,)))[0][1]
    two = plan.matter._replace(asked=plan.matter.asked._replace(coaches=2))
    assert "one of them" not in calls_said(plan._replace(duties=(duty,), matter=two))[0][1]
    themselves = tuple(own._replace(by_themselves=True) for own in plan.matter.owns)
    assert calls_said(plan._replace(matter=plan.matter._replace(owns=themselves))) == []


def test_a_coach_calls_one_drill_at_a_time() -> None:
    """What begins meanwhile is called by one of those who do it."""
    plan = planned(4, STAND)
    late = [slot._replace(drill=drill("sit"), start_s=slot.start_s + 60) for slot in plan.lifters[0].slots]
    more = tuple(each._replace(slots=tuple(late)) for each in plan.lifters)
    two = plan._replace(
        lifters=(*plan.lifters, *more), matter=plan.matter._replace(owns=(*plan.matter.owns, *plan.matter.owns))
    )
    first, second = (said for _, said in calls_said(two))
    assert first.startswith("Stand: ")
    assert second.startswith("Sit (one of them calls): ")


def test_two_who_begin_together_at_two_bars_are_looked_at_one_after_the_other() -> None:
    """At one bar, by turns, they are so anyway."""
    deep = drill("squat", BAR)
    plan = planned(2, deep, have={BAR: 2}, load=Load.LIGHT)
    duty = Duty(0, 630, 690, "watch", deep, ("L0", "L1"))
    seen = tuple(
        each._replace(slots=tuple(slot._replace(watched=True) for slot in each.slots)) for each in plan.lifters
    )
    assert duty_said(plan._replace(lifters=seen), duty) == "Stand by L0 and L1, one after the other: first try, Squat."
    at_one = tuple(each._replace(slots=tuple(slot._replace(station="bar 1") for slot in each.slots)) for each in seen)
    assert duty_said(plan._replace(lifters=at_one), duty) == "Stand by L0 and L1: first try, Squat."


def test_the_coach_reads_it_on_the_terminal_and_on_paper() -> None:
    """After the coaches' lists; nothing where nothing is called."""
    text = "\n".join(class_text(planned(4, STAND), Setting(), with_solver=True))
    assert text.index("\nThe coach") < text.index("\nCalled to all\n  10:00  Stand: ") < text.index("\nL0:")
    assert "Called to all" in class_sheet(planned(4, STAND), "a4", with_solver=True)
    assert "Called to all" not in "\n".join(class_text(planned(3, STAND), Setting(), with_solver=True))
    assert "Called to all" not in class_sheet(planned(3, STAND), "a4", with_solver=True)


def test_where_a_drill_is_shown_its_first_cue_is_said() -> None:
    """In quotation marks, after who sees it."""
    cued = STAND._replace(sections={"Say": "- Push the floor away.\n- Tall\n"})
    plan = planned(2, cued, knows=False)
    assert duty_said(plan, plan.duties[0]) == 'Show Stand to L0 and L1; say "Push the floor away".'
