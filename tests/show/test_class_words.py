"""What is said of a class: waiting, what is proved, the hall's chart, helpers, an idle coach, a class on one column."""

import pytest
from class_told import PARTNER, STICK, drill, planned

from kb.show.class_sheet import class_sheet
from kb.show.class_text import class_text
from kb.show.class_words import duty_said, letters_of, title_of, verdict
from kb.show.session_words import clock, span
from kb.show.setting import Setting
from kb.terms import Dose, DrillId, ItemId, Standard


def test_two_are_each_others_partner_and_a_third_is_helped() -> None:
    """Both are said on the cards and in the chart."""
    plan = planned(3, drill("lift the elbows", STICK, PARTNER), drill("stand"))
    said = "\n".join(class_text(plan, Setting(), with_solver=False))
    assert "helped by" in said
    assert "Help L0: Lift The Elbows." in said
    assert "h helping" in said
    assert "low elbows, group 1" in said
    assert "2 more drills another day." in said
    assert "1 more drill another day." in said
    page = class_sheet(plan, "a4", with_solver=False)
    assert ">h</td>" in page


def test_who_does_without_a_bar_is_said_first() -> None:
    """Some by name with who has it, or all; and why."""
    plan = planned(3, drill("stand"), have={STICK: 3, ItemId("bar"): 1, ItemId("training-bar"): 2})

    def said(*leave: int, items: frozenset[ItemId] = frozenset({ItemId("bar")})) -> str:
        lifters = tuple(
            each._replace(without=items) if n in leave else each for n, each in enumerate(plan.matter.asked.lifters)
        )
        matter = plan.matter._replace(asked=plan.matter.asked._replace(lifters=lifters))
        return verdict(plan._replace(matter=matter), with_solver=True)[0]

    why = "no plan was found in which 1 bar goes round 3 lifters in 60 min with no wait over 3 min."
    order = "first those with a weight, then those who hold what is done, then those of one chain together, in the"
    order += " order of the file."
    assert said(2) == f"L2 does without the bar: {why} It is left to L0 and L1: {order}"
    assert said(1, 2) == f"L1 and L2 do without the bar: {why} It is left to L0: {order}"
    assert said(0, 1, 2) == f"All do without the bar: {why}"
    both = said(0, 1, 2, items=frozenset({ItemId("bar"), ItemId("training-bar")}))
    assert "without the bar and training bar: no plan was found in which 1 bar and 2 training bars go round" in both


def test_what_is_proved_is_said_and_what_is_not() -> None:
    """Of the waiting, and of the drills at once."""
    plan = planned(2, drill("stand"))
    assert verdict(plan, with_solver=True)[0].startswith("Nobody waits at all.")
    assert verdict(plan, with_solver=True)[1].endswith("has less waiting: that is proved.")
    waits = plan._replace(idle_s=90, gap=0.25, drills_at_once=3, drills_least=1)
    assert "at most 25% of the waiting" in verdict(waits, with_solver=True)[1]
    assert "that it could be 1, with as little waiting, is not ruled out" in verdict(waits, with_solver=True)[2]
    assert "it can't be fewer" in verdict(waits._replace(drills_least=3), with_solver=True)[2]
    unknown = waits._replace(gap=None, drills_least=None)
    assert "not known" in verdict(unknown, with_solver=True)[1]
    assert "drillpath[class]" not in verdict(unknown, with_solver=True)[1]
    assert "drillpath[class]" in verdict(unknown, with_solver=False)[1]


def test_a_coach_with_nothing_to_show_looks_on() -> None:
    """And leads the warm-up, where there is one."""
    said = "\n".join(class_text(planned(1, drill("stand"), warm_up_s=0), Setting(), with_solver=False))
    assert "Free to look on throughout: count one round" in said
    assert "The coach" in said
    assert "1 lifter, 60 min, 1 coach" in said
    assert "Free to look on" in class_sheet(planned(1, drill("stand")), "a4", with_solver=False)


def test_many_are_told_by_their_groups() -> None:
    """Whole groups by number, all as all; names where a group is only in part meant, or few."""
    plan = planned(7, drill("stand"), knows=False)
    (duty,) = plan.duties
    assert duty_said(plan, duty) == "Show Stand to all 7."
    assert duty_said(plan, duty._replace(who=duty.who[:5])) == "Show Stand to L0, L1, L2, L3 and L4."
    three = plan._replace(lifters=tuple(each._replace(group=n // 5) for n, each in enumerate(plan.lifters)))
    assert duty_said(three, duty._replace(who=duty.who[:5])) == "Show Stand to group 1 (all 5)."
    three = plan._replace(lifters=tuple(each._replace(group=n // 3) for n, each in enumerate(plan.lifters)))
    assert duty_said(three, duty._replace(who=duty.who[:6])) == "Show Stand to groups 1 and 2 (all 6)."


def test_who_holds_what_they_end_in_practises() -> None:
    """Who holds something else learns; who holds nothing is new."""
    plan = planned(1, drill("stand"))
    (each,) = plan.lifters
    for held, said in (((), "new"), (("sit",), "learning"), (("stand",), "practising")):
        lifter = each.lifter._replace(fault=None, holds=frozenset(map(DrillId, held)))
        assert title_of(each._replace(lifter=lifter)) == f"L0: {said}, group 1"


def test_those_who_do_the_same_have_one_card() -> None:
    """On the terminal, under all their names; on paper each has their own."""
    plan = planned(3, drill("stand"))
    plan = plan._replace(lifters=tuple(each._replace(later=0) for each in plan.lifters))
    said = "\n".join(class_text(plan, Setting(), with_solver=True))
    assert "\nL0, L1 and L2: low elbows, group 1\n" in said
    assert class_sheet(plan, "a4", with_solver=True).count('<article class="card">') == 3


def test_what_is_left_over_is_what_fits() -> None:
    """All of it once more where that fits, else the last drills; nothing where little is left."""
    said = {
        minutes: " ".join(verdict(planned(1, drill("stand"), minutes=minutes), with_solver=True))
        for minutes in (15, 60)
    }
    assert "all of it once more" in said[60]
    assert "are left after" not in said[15]
    long = " ".join(verdict(planned(1, *[drill(f"stand {n}") for n in range(5)], minutes=35), with_solver=True))
    assert "the last drills once more in the same turns" in long


def test_what_is_new_is_shown() -> None:
    """By the coach, to all at once."""
    plan = planned(2, drill("stand"), knows=False)
    assert [duty_said(plan, duty) for duty in plan.duties] == ["Show Stand to L0 and L1."]
    assert plan.lifters[0].slots[0].part == "shown"


def test_times_and_letters() -> None:
    """Times from the start; drills by letter, in order."""
    assert (clock(0), clock(605), span(150), span(0)) == ("0:00", "10:05", "2 min 30 s", "0 s")
    assert letters_of(planned(1, drill("stand"), drill("sit"))) == {"stand": "A", "sit": "B"}


@pytest.mark.parametrize(
    ("reps", "of", "boxes", "said"),
    [
        (5, 3, 3, "On when 3 of 3: seen."),
        (5, 8, 5, "On when all 5 show this: seen."),
        (0, 3, 1, "On when it shows this"),
    ],
)
def test_a_check_is_ticked_for_its_one_round(reps: int, of: int, boxes: int, said: str) -> None:
    """Not for the tries of a full dose."""
    hold = Dose(rounds=3, reps=reps, hold_s=0 if reps else 20)
    tried = drill("stand")._replace(dose=hold, standard=Standard(of, of, "seen"))
    page = class_sheet(planned(1, tried, work=False), "a4", with_solver=True)
    assert said in page
    assert f'aria-label="{boxes} boxes to tick"' in page
    assert page.count("<span></span>") == boxes


@pytest.mark.no_cover
@pytest.mark.parametrize("width", [40, 60, 100])
def test_lines_fit_the_width(width: int) -> None:
    """However narrow the terminal."""
    plan = planned(3, drill("lift the elbows", STICK, PARTNER), *[drill(f"stand {n}") for n in range(9)])
    assert all(len(line) <= width for line in class_text(plan, Setting(width), with_solver=True))
