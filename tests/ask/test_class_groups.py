"""Chains of a class: those that share most are joined, in an order that both keep, and only for who may do them."""

import pytest

from kb.ask.class_.doing import Doing, Own
from kb.ask.class_.groups import groups_of, joined
from kb.ask.class_.own import have_of
from kb.ask.class_.people import PLENTY, Class, Lifter
from kb.ask.class_.sharing import by_weight
from kb.ask.class_.turns import loading_seconds, may_share, ready_at, steps_up, way_up
from kb.kit import Gear
from kb.terms import Dose, Drill, DrillId, FaultId, ItemId, LiftId, Load, Stage, Standard

SNATCH = LiftId("snatch")


def doing(name: str, *needs: str, work: bool = True, stage: Stage = Stage.SEGMENT, load: Load = Load.LIGHT) -> Doing:
    """A drill done for a minute and a half."""
    groups = tuple((DrillId(each),) for each in needs)
    drill = Drill(
        DrillId(name), name, (SNATCH,), stage, Standard(1, 1, "seen"), dose=Dose(reps=10), prerequisites=groups
    )
    return Doing(drill, load, work, ())


def own(name: str, *doings: Doing, new: bool = False) -> Own:
    """A lifter with a list of drills."""
    return Own(Lifter(name, SNATCH, None if new else FaultId("f")), doings, frozenset(each.drill.id for each in doings))


def ids(doings: tuple[Doing, ...] | None) -> str:
    """The drills in order."""
    return " ".join(each.drill.id for each in doings or ())


def a_class(*owns: Own, coaches: int = 1, minutes: int = 60) -> Class:
    """Who comes to an hour with a coach."""
    return Class("c", tuple(each.lifter for each in owns), {}, minutes, coaches)


def test_two_chains_joined_keep_the_order_of_both() -> None:
    """What they share is done once; what is work in either is work."""
    one = (doing("a"), doing("c", work=False), doing("z"))
    other = (doing("b"), doing("c"), doing("d"), doing("z"))
    both = joined(one, other)
    assert ids(both) == "a b c d z"
    assert both is not None
    assert both[2].work


def test_chains_that_contradict_each_other_are_not_joined() -> None:
    """Neither gives way."""
    assert joined((doing("a"), doing("b")), (doing("b"), doing("a"))) is None


def test_what_a_drill_is_built_on_comes_before_it_though_the_chains_leave_it_open() -> None:
    """And preparation before all."""
    both = joined((doing("a", "b"), doing("z")), (doing("p", stage=Stage.PREPARE), doing("b"), doing("z")))
    assert ids(both) == "p b a z"
    kept = joined((doing("a", "b"), doing("b")), (doing("a", "b"), doing("c")))
    assert ids(kept) == "a b c"


def test_those_that_share_most_are_joined_first() -> None:
    """Until a coach can run them; those on one chain are together anyway."""
    a, b, c = own("A", doing("x"), doing("z")), own("B", doing("x"), doing("y"), doing("z")), own("C", doing("q"))
    again = own("D", doing("q"))
    groups = groups_of(a_class(a, b, c, again), (a, b, c, again))
    assert [group.lifters for group in groups] == [(0, 1), (2, 3)]
    assert ids(groups[0].doings) == "x y z"
    apart = groups_of(a_class(a, b, c, again, coaches=2), (a, b, c, again))
    assert [group.lifters for group in apart] == [(0,), (1,), (2, 3)]


def test_chains_that_would_not_fit_the_class_stay_apart() -> None:
    """Then there are more than the coach can run, and the class is told so."""
    owns = [own(name, *[doing(f"{name}{n}") for n in range(4)]) for name in "ABC"]
    assert len(groups_of(a_class(*owns, minutes=60), owns)) == 2
    assert len(groups_of(a_class(*owns, minutes=18), owns)) == 3


def test_a_stick_serves_only_where_it_does_for_all() -> None:
    """Of those on one chain, and of those joined; never for work."""
    stick = (Gear(ItemId("bar"), ItemId("stick")),)
    light, bar = doing("x", work=False)._replace(light_gear=stick), doing("x", work=False)
    for pair, serves in (((light, light), stick), ((light, bar), None), ((bar, light), None)):
        owns = [own("A", pair[0]), own("B", pair[1])]
        (group,) = groups_of(a_class(*owns), owns)
        assert group.doings[0].light_gear == serves
        both = joined((pair[0], doing("y")), (pair[1],))
        assert both is not None
        assert both[0].light_gear == serves
    worked = joined((light,), (doing("x"),))
    assert worked is not None
    assert (worked[0].work, worked[0].light_gear) == (True, None)


def test_chains_of_different_lifts_stay_apart() -> None:
    """Nobody is given another lift's drills because the coach is short."""
    owns = [own(name, doing(name), doing("z")) for name in "ABC"]
    other = owns[2]._replace(lifter=owns[2].lifter._replace(lift=LiftId("clean")))
    groups = groups_of(a_class(*owns), [*owns[:2], other])
    assert [group.lifters for group in groups] == [(0, 1), (2,)]


def test_who_is_new_is_not_put_on_drills_that_are_not_theirs() -> None:
    """Nor on any whose prerequisites they don't hold; who is new may be joined with who does less of the same."""
    new = own("N", doing("a"), doing("b"), new=True)
    older = [own("A", doing("x", "w"), doing("z")), own("B", doing("a"), doing("y"))]
    groups = groups_of(a_class(new, *older), [new, *older])
    assert [group.lifters for group in groups] == [(0,), (1, 2)]
    less = own("M", doing("a"), new=True)
    held = less._replace(lifter=less.lifter._replace(holds=frozenset({DrillId("b")})))
    joint = groups_of(a_class(new, held, own("A", doing("x")), coaches=1), [new, held, own("A", doing("x"))])
    assert [group.lifters for group in joint] == [(0, 1), (2,)]


def test_a_partner_is_there_where_two_come() -> None:
    """A person, not a thing."""
    one = Class("c", (Lifter("A", SNATCH),), {ItemId("bar"): 2, ItemId("wall"): PLENTY, ItemId("box"): 0}, 60, 1)
    assert have_of(one) == {"bar", "wall"}
    assert have_of(one._replace(lifters=one.lifters * 2)) == {"bar", "wall", "partner"}


@pytest.mark.parametrize(
    ("dose", "check", "shared"),
    [
        (Dose(rounds=3, reps=5, rest_s=20), False, True),
        (Dose(rounds=3, reps=5, rest_s=19), False, False),
        (Dose(rounds=3, reps=5, rest_s=0), True, True),
        (Dose(rounds=5, reps=5, every_s=40), False, True),
        (Dose(rounds=5, reps=5, every_s=39), False, False),
    ],
)
def test_two_share_where_each_rests_while_the_other_works(dose: Dose, check: bool, shared: bool) -> None:
    """Five repetitions of 4 s are a round of 20 s."""
    assert may_share(dose, check=check) is shared


@pytest.mark.parametrize(("people", "shared"), [(2, True), (3, True), (4, False)])
def test_more_than_two_share_where_each_rests_while_all_others_work(people: int, shared: bool) -> None:
    """Rounds of 20 s: two others' fit 40 s of rest and an interval of a minute, three others' don't."""
    assert may_share(Dose(rounds=3, reps=5, rest_s=40), people, check=False) is shared
    assert may_share(Dose(rounds=3, reps=5, every_s=60), people, check=False) is shared
    assert may_share(Dose(rounds=3, reps=5), people, check=True)


def test_a_shared_bar_only_goes_up() -> None:
    """Who lifts least does so first; those of one weight take turns; each step is a round for who is left."""
    dose = Dose(rounds=4, reps=5, rest_s=60)
    assert ready_at(20, [30, 40], dose, 300) == (30, 30 + 300 + 30)
    assert ready_at(20, [30, 30], dose, 300) == (30, 50)
    assert ready_at(20, [40, 60], dose, 300)[0] == loading_seconds(2, dose, 2)
    assert way_up(20, [40, 60]) == (30, 40, 50, 60)


def test_those_nearest_in_weight_share() -> None:
    """Nobody further apart than 10 kg while there are bars; as few bars as that takes, none left out."""
    assert by_weight([26, 40, 52, 70, 85], 4, 2) == [3, 2]
    assert by_weight([26, 40, 52, 70, 85], 4, 5) == [1, 1, 1, 1, 1]
    assert by_weight([40, 41, 60, 61], 4, 4) == [2, 2]
    assert by_weight([40, 50, 60, 70], 2, 1) == [2, 2]
    assert by_weight([40] * 5, 4, 2) in ([4, 1], [3, 2])


def test_the_bar_goes_up_in_even_jumps() -> None:
    """At most 10 kg each, at most four of them; everyone at the bar does a round at each but the last."""
    assert steps_up(20, 30) == (30,)
    assert steps_up(20, 100) == (40, 60, 80, 100)
    assert all(step < 61 for step in steps_up(15, 61)[:-1])
    dose = Dose(reps=5)
    assert loading_seconds(0, dose, 2) == 0
    assert loading_seconds(1, dose, 2) == 30
    assert loading_seconds(3, dose, 2) == 3 * 30 + 2 * 2 * 20


def test_who_does_without_a_bar_stays_apart_from_who_has_one() -> None:
    """Though they do the same drills: neither one group at once, nor joined because there are too many."""
    without = own("B", doing("a"), doing("z"))
    without = without._replace(lifter=without.lifter._replace(without=frozenset({ItemId("bar")})))
    same = own("A", doing("a"), doing("z"))
    owns = (same, without, own("C", doing("b"), doing("z")))
    assert [group.lifters for group in groups_of(a_class(*owns), owns)] == [(0, 2), (1,)]
    assert [group.lifters for group in groups_of(a_class(*owns[:2]), owns[:2])] == [(0,), (1,)]
