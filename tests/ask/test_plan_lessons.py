"""So many lessons and no more: every law, over lifts, kits, counts and stiff joints; and how far they lead."""

import sqlite3
from collections.abc import Collection, Mapping

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lesson_rules import broken_lesson_rules

from kb.ask import read
from kb.ask.ability.standing import standing
from kb.ask.fear import steps_for
from kb.ask.plan.goals import Goals, needed, parts_by_nearness, shed
from kb.ask.plan.lesson import Line
from kb.ask.plan.lessons import Lessons, in_lessons
from kb.ask.plan.stiff import check_joints, meanwhile, openers
from kb.ask.plan.take_home import holds_after, take_home
from kb.ask.plan.teaching import Teaching
from kb.ask.shelf import Shelf
from kb.dials import spans, step
from kb.errors import BadInput, NoAnswer
from kb.show.lessons_answer import LessonsAnswer
from kb.show.lessons_json import lessons_json
from kb.show.lessons_words import headline
from kb.terms import Catch, DrillId, ItemId, LiftId, Load, Speed, Stage

LIFTS = ("snatch", "clean", "jerk", "clean-and-jerk")
BAR_ROOM = frozenset(
    ItemId(each)
    for each in "bar,training-bar,discs,light-discs,stick,wedge,headroom,wall,floor-line,drop-floor".split(",")
)


class Coach:
    """The shipped library, asked for lessons."""

    def __init__(self, db: sqlite3.Connection, shelves: Mapping[LiftId, Shelf]) -> None:
        self.db, self.shelves = db, shelves
        self.faults = read.faults(db)
        self.texts = {lift: read.sections(db, "drill", shelf.drills) for lift, shelf in shelves.items()}

    def teaching(
        self, lift: str, have: frozenset[ItemId], minutes: int, stiff: tuple[str, ...] = (), most: int = 6
    ) -> Teaching:
        """What lessons of a lift are made of."""
        shelf = self.shelves[LiftId(lift)]
        fits = shelf.fits(have)
        opening = tuple(openers(shelf, fits, shelf.fits(frozenset({ItemId("stick")})), self.faults, stiff))
        misses = frozenset(each for each, text in self.texts[shelf.lift.id].items() if "Miss" in text)
        return Teaching(shelf, have, fits, minutes, most, "either", stiff, opening, frozenset(map(DrillId, misses)))

    def lessons(
        self,
        lift: str,
        count: int,
        have: frozenset[ItemId] = BAR_ROOM,
        minutes: int = 60,
        *,
        holds: Collection[str] = (),
        stiff: tuple[str, ...] = (),
        most: int = 6,
    ) -> Lessons:
        """So many lessons, for who holds some drills and what they stand on."""
        held = standing(self.shelves[LiftId(lift)], [DrillId(each) for each in holds])
        return in_lessons(self.teaching(lift, have, minutes, stiff, most), held, count)

    def broken(self, lessons: Lessons, held: Collection[DrillId]) -> list[str]:
        """Which laws some lessons break."""
        shelf = lessons.teaching.shelf
        texts = self.texts[shelf.lift.id]
        answer = lessons_json(LessonsAnswer(lessons, None, 2, {}, texts))
        known = {*held, *(each.id for each in lessons.teaching.openers)}
        return broken_lesson_rules(answer, shelf, lessons.teaching.have, known, texts, len(lessons.lessons))


@pytest.fixture(scope="module")
def coach(db: sqlite3.Connection, shelves: dict[LiftId, Shelf]) -> Coach:
    """The shipped library, asked for lessons."""
    return Coach(db, shelves)


@pytest.mark.no_cover
@pytest.mark.parametrize("lift", LIFTS)
@pytest.mark.parametrize("kit", ["stick", "home", "hall", "full"])
def test_every_lesson_keeps_the_laws(coach: Coach, lift: str, kit: str) -> None:
    """One to four lessons of 30 to 60 minutes, of a body that is stiff nowhere, in one joint or in two."""
    shelf = coach.shelves[LiftId(lift)]
    for count, minutes, stiff in ((1, 45, ()), (1, 45, ("shoulder",)), (3, 60, ("ankle",)), (4, 30, ("ankle", "hip"))):
        lessons = coach.lessons(lift, count, shelf.kits[kit], minutes, stiff=stiff)
        assert coach.broken(lessons, ()) == [], (count, minutes, stiff)


@pytest.mark.no_cover
@settings(max_examples=60, deadline=None)
@given(data=st.data())
def test_lessons_of_any_question_keep_the_laws(coach: Coach, data: st.DataObject) -> None:
    """Any gear, any minutes, whatever is held; where there is no lesson, that is said."""
    lift = data.draw(st.sampled_from(LIFTS[:3]))
    shelf = coach.shelves[LiftId(lift)]
    have = frozenset(data.draw(st.sets(st.sampled_from(sorted(shelf.kits["full"])), max_size=14))) | {ItemId("stick")}
    held = data.draw(st.sets(st.sampled_from(sorted(shelf.drills)), max_size=4))
    joints = sorted({joint for drill in shelf.drills.values() for joint in drill.opens})
    stiff = tuple(data.draw(st.lists(st.sampled_from(joints), max_size=3, unique=True)))
    count, minutes = data.draw(st.integers(1, 6)), data.draw(st.integers(20, 120))
    try:
        lessons = coach.lessons(lift, count, have, minutes, holds=held, stiff=stiff, most=data.draw(st.integers(1, 6)))
    except NoAnswer:  # its words are tested by themselves
        return
    assert coach.broken(lessons, standing(shelf, held)) == []


@pytest.mark.no_cover
@pytest.mark.parametrize("lift", LIFTS[:3])
def test_minutes_are_used(coach: Coach, lift: str) -> None:
    """With a bar, at most five are left in a lesson of up to an hour."""
    for minutes in (30, 45, 60):
        for lesson in coach.lessons(lift, 3, minutes=minutes).lessons:
            assert lesson.left <= 5


@pytest.mark.no_cover
@pytest.mark.parametrize("lift", LIFTS[:3])
def test_more_lessons_lead_no_less_far(coach: Coach, lift: str) -> None:
    """The step left to the whole lift never grows with the number of lessons, and many lead to all of it."""
    shelf = coach.shelves[LiftId(lift)]
    left = []
    for count in (1, 2, 3, 5, 8):
        end = coach.lessons(lift, count).lessons[-1].end
        assert end is not None
        left.append(step(shelf.dials[end.id], shelf.dials[shelf.lift.drill], spans(shelf.lift)))
    assert left == sorted(left, reverse=True)
    assert left[-1] == 0


@pytest.mark.no_cover
@pytest.mark.parametrize("count", [2, 3, 4, 6])
def test_a_lift_of_two_halves_ends_in_both(coach: Coach, count: int) -> None:
    """In a whole clean and jerk, or in a clean and a jerk; never with all the lessons gone to one of them."""
    for holds in ((), ("hang-clean",), ("power-jerk",)):
        last = coach.lessons("clean-and-jerk", count, minutes=45, holds=holds).lessons[-1]
        assert last.end is not None
        done = {*last.end.lifts, *(last.other.lifts if last.other else ())}
        assert LiftId("clean-and-jerk") in done or {LiftId("clean"), LiftId("jerk")} <= done
        if last.other is not None:
            assert any(line.drill == last.other for line in last.lines)
            first, then = headline(coach.lessons("clean-and-jerk", count, minutes=45, holds=holds)).split(
                " and, from the shoulders, "
            )
            jerk = next(each for each in (last.end, last.other) if "jerk" in each.lifts)
            assert then.startswith(jerk.name.lower())
            assert jerk.name.lower() not in first


def test_who_is_afraid_is_given_small_steps(coach: Coach) -> None:
    """Fewer new drills; steps against fear come as soon as they can, and the lift's laws hold as ever."""
    shelf = coach.shelves[LiftId("snatch")]
    held = standing(shelf, [DrillId("hang-power-snatch"), DrillId("overhead-squat")])
    steps = steps_for(shelf.lift.serves, shelf.drills.values(), coach.faults)
    asked = coach.teaching("snatch", BAR_ROOM, 50, most=3)
    found = in_lessons(asked._replace(steps=steps), held, 4)
    assert found.lessons[0].shown[0].id == "press-under"
    assert sum(each in steps for lesson in found.lessons for each in lesson.shown) == 2
    assert coach.broken(found, held) == []
    plain = in_lessons(asked, held, 4)
    assert not {each.id for each in steps} & {each.id for each in plain.lessons[0].shown}


def test_a_first_evening_of_the_clean_ends_in_a_clean(coach: Coach) -> None:
    """Six new drills, then the way out, then the training bar, which is lighter than the other."""
    (lesson,) = coach.lessons("clean", 1, minutes=45).lessons
    assert lesson.end is not None
    assert (lesson.end.id, len(lesson.shown)) == ("high-hang-power-clean", 6)
    last = [line for line in lesson.lines if line.kind in ("miss", "lift")]
    assert [(line.kind, line.using) for line in last[-2:]] == [("miss", None), ("lift", "training-bar")]


def test_fewer_new_drills_go_less_far_but_still_end_in_a_movement(coach: Coach) -> None:
    """For someone shy."""
    (lesson,) = coach.lessons("clean", 1, minutes=45, most=3).lessons
    assert len(lesson.shown) == 3
    assert lesson.end is not None


def test_wrists_that_cannot_rack_clean_two_weights(coach: Coach) -> None:
    """Where they are there; where not, two fingers and a wider grip help in the rack."""
    pair = coach.lessons("clean", 1, BAR_ROOM | {ItemId("hand-weight-pair")}, 45, stiff=("wrist",))
    assert pair.goal is not None
    assert pair.goal.id == "two-weight-hang-clean"
    (without,) = coach.lessons("clean", 1, minutes=45, stiff=("wrist",)).lessons
    rack = next(line for line in without.lines if line.drill.id == "rack-hold")
    assert (rack.own, rack.aids) == ("line", ("two-fingers",))
    assert without.lines[0].kind == "open"
    assert "wrist" in without.lines[0].drill.opens


def test_stiff_ankles_go_high_before_they_go_low(coach: Coach) -> None:
    """The power snatch first; then the squat to their own depth, heels on a wedge, and the way out of it."""
    lessons = coach.lessons("snatch", 3, holds=["hang-power-snatch"], stiff=("ankle",))
    ends = [lesson.end.id for lesson in lessons.lessons if lesson.end]
    assert "power-snatch" in ends
    lines = [line for lesson in lessons.lessons for line in lesson.lines]
    squat = next(line for line in lines if line.drill.id == "overhead-squat")
    assert (squat.own, squat.aids, squat.load) == ("depth", ("wedge",), Load.STICK)
    assert "snatch-miss-practice" in {line.drill.id for line in lines}
    assert not [line for line in lines if line.drill.speed is Speed.FULL and line.drill.catch is Catch.FULL]
    assert "full-snatch" in {drill.id for drill in lessons.missing}
    assert all(lesson.lines[0].kind == "open" for lesson in lessons.lessons)


def test_nothing_raises_the_heels_under_a_bar_or_in_a_jump(coach: Coach) -> None:
    """Nor where the way out is practised."""
    lines: list[Line] = []
    for lift in ("snatch", "clean"):
        for lesson in coach.lessons(lift, 4, stiff=("ankle",)).lessons:
            lines += lesson.lines
    raised = [line for line in lines if "wedge" in line.aids]
    assert raised
    assert all(line.load <= Load.STICK and line.drill.speed <= Speed.SLOW and line.kind != "miss" for line in raised)


def test_how_to_work_with_a_stiff_joint_is_said_by_its_cause(coach: Coach) -> None:
    """Named after the joint, of a fault of the lift."""
    for lift, joint, fault in (("snatch", "ankle", "heels-lift-in-catch"), ("clean", "wrist", "clean-low-elbows")):
        kept = meanwhile(coach.shelves[LiftId(lift)], coach.faults, joint)
        assert kept is not None
        assert kept[0].id == fault
    with pytest.raises(BadInput, match="ankel"):
        check_joints(coach.shelves[LiftId("snatch")], ["ankel"])


def test_what_is_taken_home_was_shown_and_needs_nobody(coach: Coach) -> None:
    """Up to four drills, none heavier than a stick, and what is there."""
    have = frozenset({ItemId("stick"), ItemId("headroom")})
    for lift in LIFTS[:3]:
        lessons = coach.lessons(lift, 2, stiff=("ankle",))
        home = take_home(lessons, have)
        fits = lessons.teaching.shelf.fits(have)
        shown = {line.drill.id for lesson in lessons.lessons for line in lesson.lines}
        assert 3 <= len(home) <= 4
        assert all(line.drill.id in shown and line.drill.id in fits and line.load <= Load.STICK for line in home)
        assert home[0].drill.stage is Stage.PREPARE
    assert take_home(coach.lessons("jerk", 1, holds=["full-jerk"]), frozenset()) == ()


@pytest.mark.no_cover
@pytest.mark.parametrize("lift", LIFTS[:3])
def test_the_next_lesson_goes_on_from_there(coach: Coach, lift: str) -> None:
    """What is held after two lessons, handed back, stands for all that was shown but what only opens or strengthens."""
    first = coach.lessons(lift, 2)
    again = standing(first.teaching.shelf, holds_after(first))
    shelf = first.teaching.shelf
    kept = {
        each
        for each in first.known
        if each in shelf.drills and shelf.drills[each].stage not in (Stage.PREPARE, Stage.FINISH)
    }
    assert kept <= again
    assert first.after is not None
    shown = {drill.id for drill in coach.lessons(lift, 1, holds=holds_after(first)).lessons[0].shown}
    assert not shown & kept


def test_a_lesson_too_short_for_a_drill_names_the_least(coach: Coach) -> None:
    """And that many minutes do."""
    with pytest.raises(NoAnswer, match=r"the least that will do is (\d+)") as short:
        coach.lessons("snatch", 1, minutes=6)
    assert coach.lessons("snatch", 1, minutes=int(str(short.value).split()[-1])).lessons[0].shown


def test_a_way_sheds_what_only_bridges_it(coach: Coach) -> None:
    """One at a time, never what a later drill stands on, and no more than there is."""
    goals = Goals(coach.teaching("clean", BAR_ROOM, 60))
    shelf = goals.teaching.shelf
    for group in goals.ahead(frozenset()):
        for goal in group:
            way = goals.way(goal, frozenset())
            assert way is not None
            spare = len(way) - sum(needed(way, ()))
            for count in range(spare + 1):
                less = shed(shelf, way, (), count)
                assert less is not None or count
                if less is not None:
                    known = set[DrillId]()
                    for drill in less:
                        assert all(known & set(each) for each in drill.groups)
                        known.add(drill.id)
                    assert less[-1] == goal


def test_parts_are_in_order_of_their_step_to_the_whole(shelves: dict[LiftId, Shelf]) -> None:
    """As the dials have it: the lift first, all at full speed, and none that is held."""
    shelf = shelves[LiftId("snatch")]
    have, held = shelf.kits["hall"], DrillId("hang-snatch")
    parts = parts_by_nearness(shelf, have, [held])
    steps = [step(shelf.dials[part], shelf.dials[shelf.lift.drill], spans(shelf.lift)) for part in parts]
    assert steps == sorted(steps)
    assert held not in parts
    assert parts[0] == shelf.lift.drill
    assert all(shelf.drills[part].speed is Speed.FULL for part in parts)
