"""What there is more for who has ended early: with free gear, in turns where they were, never the day's weight."""

from itertools import pairwise

from class_told import STICK, drill, planned

from kb.ask.class_.going_on import More
from kb.ask.class_.slots import ClassPlan
from kb.kit import Gear
from kb.terms import Dose, ItemId, Load, Stage

BAR = ItemId("bar")
STAND, LIFT = drill("stand"), drill("lift the bar", BAR)


def more(plan: ClassPlan) -> list[More | None]:
    """Each lifter's."""
    return [each.more for each in plan.lifters]


def test_the_last_drill_again_to_the_end() -> None:
    """From their own end; so many rounds as fit with their rests."""
    plan = planned(1, drill("sit"), STAND, minutes=23)
    (found,) = more(plan)
    assert found is not None
    assert (found.drill.id, found.start_s, found.end_s) == ("stand", plan.lifters[0].slots[-1].end_s, 1380)
    assert found.every_s == 20 + 30
    assert found.rounds == (found.end_s - found.start_s) // 50
    assert (plan.end_s, plan.until_s) == (found.start_s, 1380)


def test_over_eight_minutes_the_last_drills_come_by_turns() -> None:
    """Four minutes each, three at most, the last of the list first; each with its own rounds."""
    plan = planned(1, drill("walk"), drill("jump"), drill("sit"), STAND, minutes=40)
    (found,) = more(plan)
    assert found is not None
    assert [each.id for _, _, each in found.legs[:4]] == ["stand", "sit", "jump", "stand"]
    assert found.legs[0][0] == found.start_s
    assert found.legs[-1][1] == found.end_s == 2400
    assert all(one[1] == other[0] for one, other in pairwise(found.legs))
    assert {end - start for start, end, _ in found.legs[:-1]} == {240}
    whole = [found.rounds, *(each.rounds for each in found.others)]
    assert sum(whole) == sum((end - start) // 50 for start, end, _ in found.legs)


def test_nobody_changes_to_what_takes_more_than_they_have() -> None:
    """With a stick in hand no bar is taken, and preparation isn't gone round."""
    prepares = drill("reach")._replace(stage=Stage.PREPARE)
    (found,) = more(planned(1, prepares, LIFT, drill("press", STICK), have={BAR: 1, STICK: 1}))
    assert found is not None
    assert found.drill.id == "press"
    assert found.others == ()


def test_under_three_minutes_are_not_worth_it() -> None:
    """Nobody is given anything."""
    end = -(-planned(1, STAND).end_s // 60)
    assert more(planned(1, STAND, minutes=end + 2)) == [None]
    assert more(planned(1, STAND, minutes=end + 3)) != [None]


def test_nobody_has_what_is_out() -> None:
    """One bar and three lifters: it is free, and one's, when the last has ended; the others have something else."""
    plan = planned(3, STAND, LIFT, have={BAR: 1}, most_wait_s=1200, pairs=False)
    whole = [more for each in plan.lifters for more in each.goes_on]
    assert {each.gear for each in whole} == {(BAR,), ()}
    assert {each.drill.id for each in whole} == {"lift the bar", "stand"}
    (use,) = plan.gear
    assert (use.have, use.peak) == (1, 1)
    held = [(slot.start_s, slot.end_s) for each in plan.lifters for slot in each.slots if BAR in slot.gear]
    held += [(each.start_s, each.end_s) for each in whole if BAR in each.gear]
    held.sort()
    assert all(one[1] <= other[0] for one, other in pairwise(held))


def test_a_stick_serves_where_the_bar_is_out() -> None:
    """If the drill can be done with one, until the bar is free."""
    easy = LIFT._replace(load=(Load.STICK, Load.LIGHT))
    stick = (Gear(BAR, STICK),)
    plan = planned(
        2, STAND, easy, have={BAR: 1, STICK: 2}, most_wait_s=1200, pairs=False, load=Load.LIGHT, by_stick=stick
    )
    first, then, *_ = sorted((each for one in plan.lifters for each in one.goes_on), key=lambda each: each.start_s)
    assert (first.load, first.gear, first.station) == (Load.STICK, (STICK,), "floor")
    assert (then.load, then.gear, then.station) == (Load.LIGHT, (BAR,), "bar 1")
    assert first.end_s <= then.start_s


def test_two_in_turns_stay_two() -> None:
    """One set of gear, the second a round later; each rests while the other works."""
    plan = planned(2, LIFT, have={BAR: 1})
    first, second = more(plan)
    assert first is not None
    assert second is not None
    assert (first.shares, second.shares) == (("L1",), ("L0",))
    assert (first.gear, second.gear) == ((BAR,), ())
    assert second.start_s == first.start_s + 30
    assert first.start_s == plan.end_s
    assert first.station == second.station == "bar 1"
    assert first.every_s >= 2 * 20


def test_for_whom_nothing_is_free_takes_turns() -> None:
    """With somebody who does alone what both had on their lists, at no more than it was done at."""
    plan = planned(3, LIFT, have={BAR: 1}, most_wait_s=1200, pairs=False, minutes=90)
    shared = [each for each in more(plan) if each is not None and each.shares]
    assert [each.gear for each in shared].count(()) == 2
    assert {name for each in shared for name in each.shares} == {"L0", "L1", "L2"}
    assert len(shared) == 3
    assert shared[0].end_s == shared[1].end_s
    assert all(each.rounds * each.every_s <= each.end_s - each.start_s for each in shared)


def test_each_keeps_their_own_bar() -> None:
    """Two who had one each go on at the same."""
    plan = planned(2, LIFT, have={BAR: 2, STICK: 0})
    for each in plan.lifters:
        assert each.more is not None
        assert each.more.station == each.slots[-1].station
    assert plan.gear[0].peak == 2


def test_the_day_s_weight_is_not_repeated() -> None:
    """There the lift is done at a light bar."""
    (found,) = more(planned(1, LIFT, have={BAR: 1}, load=Load.WORKING))
    assert found is not None
    assert found.load is Load.LIGHT


def test_nothing_to_go_on_with() -> None:
    """Preparation isn't gone on with, nor what needs a partner."""
    assert more(planned(1, drill("reach")._replace(stage=Stage.PREPARE))) == [None]
    partner = drill("help", ItemId("partner"))
    found = more(planned(2, STAND, partner))
    assert [each and each.drill.id for each in found] == ["stand", "stand"]
    assert more(planned(2, partner)) == [None, None]


def test_rest_where_the_dose_says_none() -> None:
    """As long again as the round; by the clock where the dose is."""
    (found,) = more(planned(1, STAND._replace(dose=Dose(reps=5))))
    assert found is not None
    assert found.every_s == 40
    (found,) = more(planned(1, STAND._replace(dose=Dose(rounds=3, reps=5, every_s=60))))
    assert found is not None
    assert found.every_s == 60
