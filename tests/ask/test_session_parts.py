"""The small parts of a session: what things are worth, how a course is cut, what is asked of a warm-up, the pace."""

from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st
from session_rules import dose_s

from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.session.course import cut_course, held, on_bar
from kb.ask.session.pace import beats, block_beats, count
from kb.ask.session.records import Block
from kb.ask.session.sessions import fault_sessions
from kb.ask.session.warm_up import asked_of, asked_positions, covers, raises
from kb.ask.session.worth import WORTH, amounts, at_least_half, in_part, in_passing, longer, one_round
from kb.ask.shelf import Shelf
from kb.dials import Dials
from kb.dose import round_seconds, sets
from kb.kit import Gear
from kb.loading import Loaded
from kb.terms import Catch, Dose, Drill, DrillId, FaultId, ItemId, LiftId, Load, Speed, Stage, Standard

Shelves = dict[LiftId, Shelf]

TEMPOS = st.one_of(st.none(), st.tuples(*[st.integers(0, 4)] * 4).filter(any))
# every field by name: builds would make up values for those left out
ROUNDS = st.builds(
    Dose,
    rounds=st.integers(1, 8),
    reps=st.integers(1, 8),
    tempo=TEMPOS,
    hold_s=st.integers(0, 20),
    sides=st.integers(1, 2),
    rest_s=st.integers(0, 90),
    good=st.just(0),
    success=st.just(80),
    every_s=st.just(0),
)
GOOD = st.builds(
    Dose,
    rounds=st.just(1),
    reps=st.integers(1, 5),
    tempo=TEMPOS,
    hold_s=st.just(0),
    sides=st.just(1),
    rest_s=st.integers(0, 60),
    good=st.integers(1, 30),
    success=st.integers(50, 100),
    every_s=st.just(0),
)
BY_THE_CLOCK = ROUNDS.map(lambda dose: dose._replace(rest_s=0, every_s=round_seconds(dose) + 20))
DOSES = st.one_of(ROUNDS, GOOD, BY_THE_CLOCK)


def test_every_weight_has_its_reason() -> None:
    """One table, points and why; what is lost is below nothing, all else above."""
    for name, (points, why) in WORTH.items():
        assert (points < 0) == (name == "opener"), name
        assert len(why) > 20


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 2000), st.integers(1, 30))
def test_the_first_rounds_count_most(whole: int, of: int) -> None:
    """All rounds are worth the whole; each adds, and none more than the one before but for rounding."""
    worths = [in_part(whole, done, of) for done in range(of + 1)]
    assert worths[0] == 0
    assert worths[-1] == whole
    gains = [b - a for a, b in pairwise(worths)]
    assert all(b <= a + 1 for a, b in pairwise(gains))
    assert min(gains) >= 0


@settings(max_examples=60, deadline=None)
@given(DOSES)
def test_amounts_are_the_dose_and_less(dose: Dose) -> None:
    """The first is the dose, uncut; then less down to one round, cut, worth less; what is beyond is worth more."""
    more = longer(dose)
    found = amounts(dose, 1000, more=more)
    assert (found[0].dose, found[0].worth, found[0].cut) == (dose, 1000, False)
    less = [each for each in found if each.cut]
    assert all(a.worth >= b.worth and dose_s(a.dose) > dose_s(b.dose) for a, b in pairwise([found[0], *less]))
    assert not less or len(sets(less[-1].dose)) == (len(sets(dose._replace(good=1))) if dose.good else 1)
    beyond = found[1 + len(less) :]
    assert [each.dose for each in beyond] == list(more)
    assert all(a.worth < b.worth for a, b in pairwise([found[0], *beyond[:8]]))
    assert all(each.rounds <= dose.rounds * 1.5 for each in more)


@settings(max_examples=60, deadline=None)
@given(DOSES)
def test_half_is_half(dose: Dose) -> None:
    """At least half of the rounds, and one fewer would be less than half."""
    half, whole = len(sets(at_least_half(dose))), len(sets(dose))
    assert 2 * half >= whole
    floor = amounts(dose, 100, least=at_least_half(dose))
    assert min(len(sets(each.dose)) for each in floor) == half


@settings(max_examples=60, deadline=None)
@given(DOSES)
def test_a_check_is_one_round_first(dose: Dose) -> None:
    """It takes what a round takes; more of it is worth a little more, and no more is done than the entry asks."""
    first, *more = in_passing(dose)
    assert first.dose == one_round(dose)
    assert dose_s(first.dose) == round_seconds(dose)
    assert all(a.worth <= b.worth for a, b in pairwise([first, *more]))
    assert not any(each.cut for each in (first, *more))
    assert all(len(sets(each.dose)) <= len(sets(dose)) for each in more)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(1, 30), min_size=1, max_size=8), st.integers(1, 70), st.data())
def test_a_course_is_cut_as_late_as_it_goes(seconds: list[int], limit: int, data: st.DataObject) -> None:
    """Sittings overlap by one entry, keep the limit, and end as late as they can, after one that ends well if any."""
    well = data.draw(st.lists(st.booleans(), min_size=len(seconds), max_size=len(seconds)))
    shared = [each // 2 for each in seconds]
    cut = cut_course(seconds, shared, limit, lambda first, end: end - first <= 4, well)

    def took(first: int, end: int) -> int:
        return (shared[first] if first else seconds[first]) + sum(seconds[first + 1 : end])

    def may(first: int, end: int) -> bool:
        return took(first, end) <= limit and end - first <= 4

    if cut is None:
        # some entry can't be followed by the next, or the only one is too long alone
        pairs = [(at, min(at + 2, len(seconds))) for at in range(max(1, len(seconds) - 1))]
        assert any(not may(*pair) for pair in pairs)
        return
    assert cut[0][0] == 0
    assert cut[-1][1] == len(seconds)
    assert all(a[1] - 1 == b[0] for a, b in pairwise(cut))
    for first, end in cut:
        assert may(first, end)
        later = [each for each in range(end + 1, len(seconds) + 1) if may(first, each)]
        if end < len(seconds):
            assert len(seconds) not in later
            assert not any(well[each - 1] for each in later)
            assert not later or well[end - 1]


def drill(name: str, **more: object) -> Drill:
    """A drill of the snatch with little to it."""
    given_: dict[str, object] = {"stage": Stage.PREPARE, "standard": Standard(1, 1, "it is done"), **more}
    return Drill(id=DrillId(name), name=name, lifts=(LiftId("snatch"),), **given_)  # type: ignore[arg-type]


def test_quick_repetitions_raise_warmth() -> None:
    """Quick and nothing held; a hold, a slow repetition or a drill of the lift doesn't."""
    quick = Dose(rounds=2, reps=10, tempo=(1, 0, 1, 0))
    assert raises(drill("steps", dose=quick))
    assert not raises(drill("held", dose=quick._replace(hold_s=5)))
    assert not raises(drill("slow", dose=quick._replace(tempo=(2, 0, 1, 0))))
    assert not raises(drill("untimed", dose=quick._replace(tempo=None)))
    assert not raises(drill("lift", dose=quick, stage=Stage.SEGMENT))


def test_what_a_chain_asks_of_a_warm_up(shelves: Shelves) -> None:
    """The lift goes through every posture of its timeline, a drill to its own; joints stand from the floor up."""
    shelf = shelves[LiftId("snatch")]
    lift = shelf.lift
    assert asked_positions(shelf.drills[lift.drill], lift) == {timed.position for timed in lift.timeline}
    assert asked_positions(shelf.drills[DrillId("overhead-squat")], lift) == {"snatch-receive"}
    asked = asked_of([], lift, shelf.drills)
    assert asked == ((), ())
    assert covers(shelf.drills[DrillId("deep-squat-sit")], asked) == 0


def test_held_is_one_of_each_group() -> None:
    """A group of which one member is held or done is met."""
    a, b, c = (DrillId(each) for each in "abc")
    needs = drill("x", prerequisites=((a, b), (c,)))
    assert held(needs, frozenset({b}))
    assert not held(needs, frozenset({a, b}))
    assert held(needs, frozenset({a, b}), frozenset({a}))
    assert not held(needs, frozenset({c}), frozenset({a}))


def test_discs_go_on_a_bar_only() -> None:
    """At light and above, where discs are among the gear."""
    discs = (Gear(ItemId("bar"), ItemId("bar")), Gear(ItemId("discs"), ItemId("discs")))
    assert on_bar(discs, Load.LIGHT)
    assert not on_bar(discs, Load.STICK)
    assert not on_bar(discs[:1], Load.WORKING)


# --- the pace ---


@settings(max_examples=60, deadline=None)
@given(DOSES, st.sampled_from([Stage.PREPARE, Stage.SEGMENT]), st.integers(0, 40), st.booleans(), st.booleans())
def test_beats_tile_a_block(dose: Dose, stage: Stage, set_up_s: int, teach: bool, discs: bool) -> None:
    """From its first second to its last without a gap or an overlap, whatever the dose."""
    block = a_block(drill("x", stage=stage, set_up_s=set_up_s), dose, teach_s=60 * teach, loading_s=30 * discs)
    at = block.start_s
    for beat in block_beats(block):
        assert beat.at_s == at
        assert beat.seconds > 0
        assert beat.say
        at += beat.seconds
    assert at == block.start_s + 30 + set_up_s + 60 * teach + 30 * discs + dose_s(dose)


def test_beats_tile_a_session(shelves: Shelves) -> None:
    """The whole session from 0 to its end."""
    shelf = shelves[LiftId("clean")]
    (found,) = fault_sessions(matter_of(shelf, ChainQuestion(FaultId("hips-rise-first"), shelf.kits["hall"])), 30)
    called = beats(found)
    assert called[0].at_s == 0
    assert all(a.at_s + a.seconds == b.at_s for a, b in pairwise(called))
    assert called[-1].at_s + called[-1].seconds == 60 * 30 - found.spare_s


def test_what_is_called() -> None:
    """By hand: a slow dip of two, a stretch on both sides, quick steps, discs going on and coming off."""
    said = _said(drill("Dip", stage=Stage.SEGMENT), Dose(rounds=2, reps=2, tempo=(4, 1, 1, 0), rest_s=60))
    assert said == [
        ("Dip. Change over.", 30),
        ("Set up.", 15),
        ("Round one. Lower for four.", 4),
        ("Hold.", 1),
        ("Up.", 1),
        ("Two. Lower for four.", 4),
        ("Hold.", 1),
        ("Up.", 1),
        ("Rest 60.", 60),
        ("Round two. Lower for four.", 4),
        ("Hold.", 1),
        ("Up.", 1),
        ("Two. Lower for four.", 4),
        ("Hold.", 1),
        ("Up.", 1),
    ]
    assert _said(drill("Reach"), Dose(hold_s=20, sides=2))[2:] == [
        ("Begin, left. Hold for 20.", 20),
        ("Begin, right. Hold for 20.", 20),
    ]
    assert _said(drill("Steps"), Dose(reps=12, tempo=(1, 0, 1, 0)))[2:] == [("Begin. Twelve, in your own time.", 24)]
    loaded = _said(drill("Clean"), Dose(reps=1), loading_s=30, loaded=Loaded(52.5, 20, (15.0, 1.25)))
    assert loaded[1] == ("Load 52.5 kilos: 15 and 1.25 a side.", 30)
    assert _said(drill("Clean"), Dose(reps=1), loading_s=30, loaded=Loaded(20, 20, ()))[1][0] == "Strip the bar."
    assert _said(drill("Clean"), Dose(reps=1), loading_s=30)[1][0] == "Put the discs on."
    assert _said(drill("Clean"), Dose(reps=1), teach_s=60)[1] == ("Watch it shown.", 60)
    assert count(13) == "13"


def a_block(each: Drill, dose: Dose, **more: object) -> Block:
    """A block of one drill from the 17th second on, slow and with empty hands."""
    dials = Dials(each.stage, 0, 0, 0, Speed.SLOW, Load.NONE, Catch.NONE, helped=False)
    return Block(17, 0, "chain", each, Load.NONE, dials, True, dose, False, (), **more)  # type: ignore[arg-type]


def _said(each: Drill, dose: Dose, **more: object) -> list[tuple[str, int]]:
    return [(beat.say, beat.seconds) for beat in block_beats(a_block(each, dose, **more))]
