"""Sessions on the shipped library: every fault in every kit at every length, judged from outside."""

from collections.abc import Iterator
from typing import Any

import pytest
from session_rules import broken_alone, broken_fault_sessions, broken_path_sessions, chain_of
from shipped import worlds

from kb.ask.chain import NoChain, chain
from kb.ask.matter import matter_of
from kb.ask.path import path
from kb.ask.question import ChainQuestion
from kb.ask.session.path_course import named_course
from kb.ask.session.records import LeftOut, Session
from kb.ask.session.sessions import MOST_MINUTES, NoSession, fault_sessions, named_session, path_sessions
from kb.ask.session.warm_up import raises
from kb.ask.session.worth import OPENING_S
from kb.ask.shelf import Shelf
from kb.errors import BadInput, NoAnswer
from kb.kit import Gear
from kb.loading import LOADING_S, Loaded
from kb.make.library import Library
from kb.terms import DrillId, FaultId, ItemId, LiftId, Load, Stage

pytestmark = pytest.mark.no_cover

Shelves = dict[LiftId, Shelf]
KITS = ("stick", "home", "hall", "full")
LENGTHS = (10, 20, 30, 45, 60)
PARTS = ("warm-up", "chain", "lift", "finish")


def asked(
    shelves: Shelves, kits: tuple[str, ...], *, every_cause: bool = False
) -> Iterator[tuple[Shelf, ChainQuestion]]:
    """Each lift's faults in each kit, for the first cause or for every one."""
    for kit in kits:
        for shelf in shelves.values():
            for fault in shelf.faults.values():
                for cause in fault.causes if every_cause else fault.causes[:1]:
                    yield shelf, ChainQuestion(fault.id, shelf.kits[kit], cause.id)


def answered(library: Library, shelf: Shelf, question: ChainQuestion, minutes: int) -> tuple[Session, ...] | None:
    """The sessions, found right; None where there is a reason for none."""
    try:
        found = fault_sessions(matter_of(shelf, question), minutes)
    except NoChain:
        with pytest.raises(NoChain):
            chain(shelf, question)
        return None
    except NoSession:
        return None
    assert broken_fault_sessions(worlds(library)[shelf.lift.id], question, found) == []
    return found


@pytest.mark.parametrize("minutes", LENGTHS)
def test_a_share_of_all_sessions_is_right(library: Library, shelves: Shelves, minutes: int) -> None:
    """Every twenty-fifth question: never over time, never out of kit, lawful, or a reason."""
    share = [each for n, each in enumerate(asked(shelves, KITS)) if n % 25 == 5 * LENGTHS.index(minutes)]
    found = [answered(library, shelf, question, minutes) for shelf, question in share]
    assert sum(each is not None for each in found) > len(found) // 2


@pytest.mark.exhaustive
@pytest.mark.parametrize("kit", KITS)
@pytest.mark.parametrize("minutes", LENGTHS)
def test_every_session_is_right(library: Library, shelves: Shelves, kit: str, minutes: int) -> None:
    """Each fault, cause and lift in each kit at each length."""
    for shelf, question in asked(shelves, (kit,), every_cause=True):
        answered(library, shelf, question, minutes)


@pytest.mark.parametrize("lift", ["snatch", "clean", "jerk", "clean-and-jerk"])
def test_sessions_along_a_path_are_right(library: Library, shelves: Shelves, lift: LiftId) -> None:
    """From nothing, and with half of it held: lawful, two new drills at most, in the hall and with a stick."""
    shelf = shelves[lift]
    for kit in ("hall", "stick"):
        holds: frozenset[DrillId] = frozenset()
        for minutes in (15, 40):
            way = path(shelf, have=shelf.kits[kit], holds=holds)
            found = path_sessions(way, shelf.kits[kit], holds, minutes)
            assert broken_path_sessions(worlds(library)[lift], holds, shelf.kits[kit], found) == []
            holds = frozenset(entry.drill.id for entry in way.entries[: len(way.entries) // 2])


def test_the_least_minutes_are_the_least(shelves: Shelves) -> None:
    """Where the minutes are too few, those named do and one less doesn't."""
    for shelf, question in list(asked(shelves, ("hall",)))[::18]:
        matter = matter_of(shelf, question)
        with pytest.raises(NoSession, match=r"take \d+ min") as none:
            fault_sessions(matter, 1)
        least = int(str(none.value).split()[-2])
        assert fault_sessions(matter, least)
        with pytest.raises(NoSession):
            fault_sessions(matter, least - 1)


@pytest.fixture
def crash(shelves: Shelves) -> tuple[Shelf, ChainQuestion]:
    """A bar that crashes, in the hall."""
    shelf = shelves[LiftId("clean")]
    return shelf, ChainQuestion(FaultId("clean-bar-crashes"), shelf.kits["hall"])


def test_every_slip_is_seen(library: Library, crash: tuple[Shelf, ChainQuestion]) -> None:
    """The judge can fail: each way to spoil a good session is told."""
    shelf, question = crash
    world = worlds(library)[shelf.lift.id]
    (good,) = fault_sessions(matter_of(shelf, question), 30)
    assert broken_fault_sessions(world, question, [good]) == []
    blocks = good.blocks
    places = {part: next(n for n, each in enumerate(blocks) if each.part == part) for part in PARTS}
    first, chained, lift = blocks[0], blocks[places["chain"]], blocks[places["lift"]]

    def spoilt(at: int, **changes: Any) -> Session:
        return good._replace(blocks=(*blocks[:at], blocks[at]._replace(**changes), *blocks[at + 1 :]))

    spoils = [
        good._replace(spare_s=good.spare_s + 1),
        good._replace(minutes=good.minutes - 1),
        good._replace(n=2),
        spoilt(1, start_s=blocks[1].start_s + 1),
        spoilt(0, seconds=first.seconds + 1),
        spoilt(places["chain"], dose=chained.dose._replace(reps=chained.dose.reps + 1)),
        spoilt(places["chain"], cut=not chained.cut),
        spoilt(places["chain"], work=False),
        spoilt(places["chain"], load=Load.WORKING),
        spoilt(places["chain"], if_not=lift.drill.id),
        spoilt(places["chain"], if_early=None),
        spoilt(places["lift"], loading_s=0),
        spoilt(places["lift"], part="chain"),
        spoilt(places["lift"], gear=(Gear(ItemId("bar"), ItemId("moon")),)),
        good._replace(blocks=(blocks[1], first, *blocks[2:])),
        good._replace(blocks=blocks[1:]),
        good._replace(blocks=blocks[: places["lift"]]),
        good._replace(left_out=(LeftOut(first.drill, "no time"),)),
        good._replace(left_out=(LeftOut(shelf.drills[DrillId("wrist-rock")], ""),)),
    ]
    for n, spoil in enumerate(spoils):
        assert broken_fault_sessions(world, question, [spoil]), n


def test_a_named_list_is_kept_whole(library: Library, shelves: Shelves) -> None:
    """A coach's own drills all stay, in their order, each at light at most; the lift follows, once."""
    shelf = shelves[LiftId("snatch")]
    names = [DrillId(each) for each in ("tall-snatch", "overhead-squat", "full-snatch")]
    have = shelf.kits["hall"]
    for minutes in (12, 25, 60):
        (found,) = named_session(named_course(shelf, names, have), minutes)
        assert [each for each, _ in chain_of([found])] == names
        assert broken_alone(worlds(library)[shelf.lift.id], have, found, ()) == []
        assert max(block.load for block in found.blocks) is Load.LIGHT
    with pytest.raises(NoSession, match="too short"):
        named_session(named_course(shelf, names, have), 3)


def test_a_named_list_must_be_doable(shelves: Shelves) -> None:
    """What the kit can't do, what is of another lift and what only strengthens are refused, each by name."""
    shelf = shelves[LiftId("clean")]
    with pytest.raises(NoAnswer, match="Clean from blocks at the knee can't be done"):
        named_course(shelf, [DrillId("block-clean")], shelf.kits["stick"])
    with pytest.raises(BadInput, match="full-jerk is no drill of the clean"):
        named_course(shelf, [DrillId("full-jerk")], shelf.kits["full"])
    with pytest.raises(BadInput, match="strengthens"):
        named_course(shelf, [DrillId("back-squat")], shelf.kits["full"])


def test_showing_takes_its_time(library: Library, crash: tuple[Shelf, ChainQuestion]) -> None:
    """With a class each drill is shown once: `teach_s` of its entry, and no other block changes by a second."""
    shelf, question = crash
    (found,) = fault_sessions(matter_of(shelf, question), 45, teach=True)
    assert broken_fault_sessions(worlds(library)[shelf.lift.id], question, [found]) == []
    assert all(block.teach_s == block.drill.teach_s for block in found.blocks)
    (quiet,) = fault_sessions(matter_of(shelf, question), 45)
    assert all(block.teach_s == 0 for block in quiet.blocks)


def test_discs_take_time_where_they_change(library: Library, crash: tuple[Shelf, ChainQuestion]) -> None:
    """With known weights discs go on, change and stay as the weights do."""
    shelf, question = crash
    bars = {
        "tall-clean": Loaded(20, 20, ()),
        "high-hang-clean": Loaded(30, 20, (5.0,)),
        "hang-clean": Loaded(30, 20, (5.0,)),
        "full-clean": Loaded(40, 20, (10.0,)),
    }
    (found,) = fault_sessions(matter_of(shelf, question), 30, weigh=lambda drill, _: bars.get(drill.id))
    assert broken_fault_sessions(worlds(library)[shelf.lift.id], question, [found]) == []
    took = {block.drill.id: block.loading_s for block in found.blocks if block.drill.id in bars}
    assert took == {"tall-clean": 0, "high-hang-clean": LOADING_S, "hang-clean": 0, "full-clean": LOADING_S}
    assert {block.drill.id: block.loaded for block in found.blocks if block.drill.id in bars} == bars


def test_warmth_comes_first(crash: tuple[Shelf, ChainQuestion]) -> None:
    """Raise, then mobilise, then the drills: 4.05 Jeffreys 2007; the middle about five minutes."""
    shelf, question = crash
    (found,) = fault_sessions(matter_of(shelf, question), 30)
    warm = [block for block in found.blocks if block.part == "warm-up"]
    assert raises(warm[0].drill)
    assert not any(raises(block.drill) for block in warm[1:])
    # 4.05 Jeffreys 2007: the middle of the warm-up is about 5 min
    assert 200 <= sum(block.seconds for block in warm[1:]) <= OPENING_S
    held = [bool(block.drill.dose.hold_s) for block in warm[1:]]
    assert held == sorted(held, reverse=True), "stretches first, what moves nearer to the lift"


def test_a_mobility_chain_opens_its_own_joint(shelves: Shelves) -> None:
    """Preparation in the chain counts as warm-up: stiff ankles get no second drill for the ankle alone."""
    shelf = shelves[LiftId("clean")]
    question = ChainQuestion(FaultId("heels-lift-in-catch"), shelf.kits["full"], "stiff-ankles")
    (found,) = fault_sessions(matter_of(shelf, question), 30)
    chained = [block for block in found.blocks if block.part == "chain" and block.drill.stage is Stage.PREPARE]
    warm = [block for block in found.blocks if block.part == "warm-up"]
    assert any("ankle" in block.drill.opens for block in chained)
    opened = {joint for block in chained for joint in block.drill.opens}
    assert not any(set(block.drill.opens) <= opened for block in warm[1:])


def test_strength_is_finished_with(library: Library, shelves: Shelves) -> None:
    """Where no drill of the chain works on a weak part, the session must finish on it, however short it is."""
    shelf = shelves[LiftId("snatch")]
    question = ChainQuestion(FaultId("hips-rise-first"), shelf.kits["hall"], "weak-legs-off-floor")
    for minutes in (10, 20):
        (found,) = fault_sessions(matter_of(shelf, question), minutes)
        assert any(block.part == "finish" and block.drill.id == "deadlift" for block in found.blocks)
    assert broken_fault_sessions(worlds(library)[shelf.lift.id], question, [found]) == []


def test_a_heavy_lift_is_done_light_first(library: Library, crash: tuple[Shelf, ChainQuestion]) -> None:
    """Asked for at working weight, the lift comes at light right before."""
    shelf, question = crash
    heavy = question._replace(load=Load.WORKING)
    (found,) = fault_sessions(matter_of(shelf, heavy), 45)
    assert broken_fault_sessions(worlds(library)[shelf.lift.id], heavy, [found]) == []
    assert chain_of([found])[-2:] == [("full-clean", Load.LIGHT), ("full-clean", Load.WORKING)]


def test_what_is_left_out_says_why(shelves: Shelves) -> None:
    """Time, enough of it, or gear: each reason is said where it is the reason."""
    shelf = shelves[LiftId("clean")]
    fault = FaultId("clean-bar-crashes")
    whys = {
        (kit, minutes): " / ".join(
            each.why
            for found in fault_sessions(matter_of(shelf, ChainQuestion(fault, shelf.kits[kit])), minutes)
            for each in found.left_out
        )
        for kit, minutes in (("hall", 10), ("hall", 60), ("stick", 60))
    }
    assert "no time" in whys["hall", 10]
    assert "no time" not in whys["hall", 60]
    assert "5 min of opening are enough" in whys["hall", 60]
    bare = ChainQuestion(FaultId("jerk-short-split"), frozenset({ItemId("stick"), ItemId("headroom")}))
    (only,) = fault_sessions(matter_of(shelves[LiftId("jerk")], bare), 60)
    assert "needs wall; it would open knee" in {each.why for each in only.left_out}


def test_no_time_at_all_is_said(shelves: Shelves) -> None:
    """Sessions so long that even the longest is too short can't be led through; nor can a chain that isn't there."""
    shelf = shelves[LiftId("clean")]
    slow = named_course(shelf, [DrillId("tall-clean")], shelf.kits["full"])
    endless = slow.entries[0].drill._replace(set_up_s=60 * MOST_MINUTES)
    course = slow._replace(entries=(slow.entries[0]._replace(drill=endless), *slow.entries[1:]))
    with pytest.raises(NoSession, match="even 240 minutes"):
        named_session(course, 20)
    with pytest.raises(NoChain):
        fault_sessions(matter_of(shelf, ChainQuestion(FaultId("catches-high"), shelf.kits["stick"])), 20)
