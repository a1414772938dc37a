"""What everyone who learns does today: on the shipped library, in order, in full, and what goes where time is short."""

import sqlite3
from functools import cache

import pytest

from kb.ask import read
from kb.ask.class_.doing import Own, alone_s
from kb.ask.class_.own import own_of
from kb.ask.class_.people import PLENTY, Class, Lifter
from kb.terms import DrillId, ItemId, LiftId, Load

pytestmark = pytest.mark.no_cover

BAR = ItemId("bar")
BOTH = ("overhead-squat", "tall-snatch")


def asked(db: sqlite3.Connection, *today: str, minutes: int = 60, bars: int = 1, holds: tuple[str, ...] = ()) -> Class:
    """A hall's class of two who hold the same."""
    hall = {**dict.fromkeys(read.kits(db)["hall"], PLENTY), BAR: bars}
    del hall[ItemId("training-bar")]
    lifters = tuple(Lifter(name, LiftId("snatch"), holds=frozenset(map(DrillId, holds))) for name in "AB")
    return Class("c", lifters, hall, minutes, 1, today=tuple(map(DrillId, today)))


def own(db: sqlite3.Connection, of: Class) -> Own:
    """The list of the first of them."""
    return own_of(of, cache(lambda lift: read.shelf(db, lift)))[0]


def done(found: Own) -> list[tuple[str, str, str]]:
    """Each drill, its load, and whether in full."""
    return [(each.drill.id, each.load.word, "full" if each.work else "once") for each in found.doings]


def test_a_round_of_each_on_the_way_then_these_in_full(db: sqlite3.Connection) -> None:
    """Each drill once, at its lightest; nothing before what it is built on; all on the way is shown."""
    found = own(db, asked(db, *BOTH))
    ids = [each.drill.id for each in found.doings]
    assert [each.drill.id for each in found.doings if each.work and each.load < Load.LIGHT] == list(BOTH)
    first = {each.drill.id: each.load for each in reversed(found.doings)}
    assert all(load <= max(each.drill.load[0], Load.STICK) for each in found.doings for load in [first[each.drill.id]])
    for n, each in enumerate(found.doings):
        assert all(set(group) & set(ids[:n]) for group in each.drill.groups), each.drill.id
    assert not found.knows & set(ids)
    assert (found.later, found.left) == (0, ())


def test_what_one_is_built_on_comes_first_however_they_are_named(db: sqlite3.Connection) -> None:
    """The tall snatch leads through the overhead squat: that is done in full on the way."""
    found = own(db, asked(db, *reversed(BOTH), bars=0))
    assert [each.drill.id for each in found.doings if each.work] == list(BOTH)


def test_heavier_forms_come_after_where_bars_go_round(db: sqlite3.Connection) -> None:
    """By turns of four; in the path's order, and never at working weight; with too few bars nobody queues for one."""
    few = asked(db, "tall-snatch", minutes=120)
    few = few._replace(lifters=few.lifters * 3)
    assert all(each.load < Load.LIGHT for each in own(db, few).doings)
    few = few._replace(have={**few.have, ItemId("training-bar"): 1})
    assert any(each.load is Load.LIGHT for each in own(db, few).doings)
    found = own(db, asked(db, "tall-snatch", minutes=120))
    light = [n for n, each in enumerate(found.doings) if each.load is Load.LIGHT]
    assert light
    assert done(found)[-1] == ("tall-snatch", "light", "full")
    assert ("tall-snatch", "stick", "full") in done(found)[: light[0]]
    assert light == list(range(light[0], len(found.doings)))
    assert all(each.load <= Load.LIGHT for each in own(db, asked(db, "full-snatch", minutes=200, bars=2)).doings)


def test_what_goes_first_where_time_is_short(db: sqlite3.Connection) -> None:
    """Heavier forms, then bridges, then rounds, then the last of what was named, which the list says it leaves."""
    lists = [own(db, asked(db, *BOTH, minutes=minutes, bars=2)) for minutes in range(90, 12, -1)]
    kinds = []
    for minutes, found in zip(range(90, 12, -1), lists, strict=True):
        assert alone_s(asked(db, minutes=minutes), found) <= 60 * (minutes - 10)
        heavier = any(each.load is Load.LIGHT for each in found.doings)
        rounds = sum(each.work for each in found.doings if each.load < Load.LIGHT)
        kinds.append((heavier, -len(found.left), rounds if not found.left else 0))
    assert kinds == sorted(kinds, reverse=True)
    assert {len(found.left) for found in lists} == {0, 1, 2}
    for minutes, found in zip(range(90, 12, -1), lists, strict=True):
        if found.left:
            assert found.later >= len(found.left)
            assert found.left == tuple(each for each in lists[0].left) or found.left[-1].id == BOTH[-1]
            more = -(-found.left_s // 60)
            assert own(db, asked(db, *BOTH, minutes=minutes + more, bars=2)).left == ()
            assert own(db, asked(db, *BOTH, minutes=minutes + more - 1, bars=2)).left != ()


def test_what_only_bridges_goes_before_a_dose_is_cut(db: sqlite3.Connection) -> None:
    """What something later is built on stays."""
    roomy = own(db, asked(db, "hang-power-snatch", minutes=60))
    tight = next(
        found
        for minutes in range(60, 10, -1)
        if len((found := own(db, asked(db, "hang-power-snatch", minutes=minutes))).doings) < len(roomy.doings)
    )
    assert not tight.left
    assert tight.doings[-1].work


def test_what_is_held_isnt_shown_and_the_way_is_shorter(db: sqlite3.Connection) -> None:
    """From what is held on."""
    held = ("stick-pass-through", "overhead-hold", "quarter-squat-overhead-hold", "air-squat")
    found = own(db, asked(db, "overhead-squat", holds=held, bars=0))
    assert len(found.doings) < len(own(db, asked(db, "overhead-squat", bars=0)).doings)
    assert done(found)[-1] == ("overhead-squat", "stick", "full")


def test_who_holds_all_of_it_practises_it(db: sqlite3.Connection) -> None:
    """What leads into each as a check, then these in full; nothing is new; with a bar where there are any."""
    for bars, load in ((0, "stick"), (1, "light")):
        found = own(db, asked(db, *BOTH, holds=BOTH, bars=bars))
        assert [each for each in done(found) if each[2] == "full"] == [(goal, load, "full") for goal in BOTH]
        assert any(not each.work for each in found.doings)
        assert {each.drill.id for each in found.doings} <= found.knows


def test_who_holds_the_lift_or_has_a_fault_does_what_they_would(db: sqlite3.Connection) -> None:
    """Today's drills are for who learns."""
    assert done(own(db, asked(db, *BOTH, holds=("full-snatch",)))) == done(own(db, asked(db, holds=("full-snatch",))))
    other = asked(db, *BOTH)
    other = other._replace(lifters=tuple(each._replace(lift=LiftId("clean")) for each in other.lifters))
    assert done(own(db, other)) == done(own(db, other._replace(today=())))


def test_as_there_is_time_the_list_goes_on_to_what_changes_least(db: sqlite3.Connection) -> None:
    """Drills of the path that are ready after today's, in full and at their lightest; none where they don't fit."""
    squats = frozenset(map(DrillId, ("front-squat", "air-squat")))
    of = asked(db, "hang-pull", minutes=40)._replace(lifters=(Lifter("A", LiftId("clean"), holds=squats),))
    plain, further = own(db, of), own(db, of._replace(further=1))
    assert not plain.further
    assert [each.id for each in further.further] == ["hang-clean"]
    assert done(further)[: len(plain.doings)] == done(plain)
    assert done(further)[len(plain.doings) :] == [("hang-clean", "stick", "full")]
    assert own(db, of._replace(further=1, minutes=20)).further == ()


def test_going_on_keeps_order_and_time(db: sqlite3.Connection) -> None:
    """Nothing before what it is built on, and no list longer than the class."""
    for minutes in range(20, 90, 10):
        of = asked(db, *BOTH, minutes=minutes)._replace(further=2)
        found = own(db, of)
        ids = [each.drill.id for each in found.doings]
        assert alone_s(of, found) <= 60 * (minutes - 10)
        for n, each in enumerate(found.doings):
            assert all(set(group) & set(ids[:n]) for group in each.drill.groups), each.drill.id


def test_more_than_anyone_remembers_is_not_shown(db: sqlite3.Connection) -> None:
    """Of many drills on the way those stay that something later is built on."""
    both = asked(db, "hang-power-clean", "push-press", minutes=120)
    alike = tuple(each._replace(lift=LiftId("clean-and-jerk")) for each in both.lifters)
    found = own(db, both._replace(lifters=alike))
    shelf = read.shelf(db, LiftId("clean-and-jerk"))
    needed = {member for each in found.doings for group in shelf.drills[each.drill.id].groups for member in group}
    assert {each.drill.id for each in found.doings} - {*both.today} <= needed


def test_who_cant_do_what_the_class_does_has_a_today_of_their_own(db: sqlite3.Connection) -> None:
    """In its place, with its own way there; the others as they were."""
    of = asked(db, "hang-power-snatch")
    first, second = of.lifters
    own_goal = first._replace(today=(DrillId("overhead-squat"),))
    found = own_of(of._replace(lifters=(own_goal, second)), cache(lambda lift: read.shelf(db, lift)))
    assert [each.doings[-1].drill.id for each in found] == ["overhead-squat", "hang-power-snatch"]
    assert found[1] == own_of(of, cache(lambda lift: read.shelf(db, lift)))[1]
