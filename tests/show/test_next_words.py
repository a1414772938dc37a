"""Why a drill is ready or shaky, in a coach's words, and what was taken for granted."""

from handmade import drill

from kb.ask.ability.fringe import Closed, Fringe, Ready, Shaky
from kb.show.next_text import granted_lines, next_text
from kb.show.next_words import ready_why, shaky_why
from kb.show.setting import Setting
from kb.terms import DrillId, Lift, LiftId, Load, Standard

A, B, C, D, E = (DrillId(each) for each in "abcde")
DRILLS = {each: drill(each)._replace(name=f"Drill {each.upper()}, held") for each in (A, B, C, D, E)}
CLEAN, JERK, BOTH = LiftId("clean"), LiftId("jerk"), LiftId("clean-and-jerk")
LIFTS = {
    each: Lift(each, each.replace("-", " ").capitalize(), (), (), A, Standard(1, 1, "still"), parts=parts)
    for each, parts in ((CLEAN, ()), (BOTH, (CLEAN, JERK)), (JERK, ()))
}
ALONE = Ready(DRILLS[A], Load.NONE, (), (), (), (), 0, ())
NOTHING = Closed(frozenset(), (), ())


def test_why_it_is_ready() -> None:
    """Whether every way or some way leads through it, what waits, what it opens, what was held before it."""
    assert ready_why(ALONE, DRILLS, LIFTS) == "No other drill waits for it. It needs nothing before it."
    assert ready_why(ALONE._replace(must=(CLEAN, BOTH, JERK), waiting=1), DRILLS, LIFTS) == (
        "Every way to the clean, the jerk and the clean and jerk leads through it. 1 drill can't be had without it."
        " It needs nothing before it."
    )
    some = ALONE._replace(may=(CLEAN,), waiting=12, opens=(B, C, D), met=(E,))
    assert ready_why(some, DRILLS, LIFTS) == (
        "One way to the clean leads through it. 12 drills can't be had without it."
        " It opens at once: Drill B, held; Drill C, held; Drill D, held. Held before it: Drill E, held."
    )
    many = ready_why(ALONE._replace(opens=(A, B, C, D)), DRILLS, LIFTS)
    assert many.startswith("It opens at once: Drill A, held; Drill B, held; 2 more.")


def test_why_it_is_shaky() -> None:
    """With what would be built on it, or nothing."""
    assert shaky_why(Shaky(DRILLS[A], ()), DRILLS) == "Nothing that is held is built on it."
    assert shaky_why(Shaky(DRILLS[A], (B,)), DRILLS) == (
        "Nothing that is held is built on it yet. What would be: Drill B, held."
    )


def test_what_was_taken_for_granted() -> None:
    """What is certain together; of several that would do, the first and what it may have been, and not twice."""
    found = Closed(frozenset((A, B, C, D)), (A, B), ((B, C, E),))
    assert granted_lines(found, DRILLS, Setting()) == [
        "  Drill A, held: what was named is built on it.",
        "  Drill B, held; it may as well have been Drill C, held or Drill E, held.",
    ]
    assert granted_lines(Closed(frozenset((B, D)), (B,), ((B, C),)), DRILLS, Setting()) == [
        "  Drill B, held; it may as well have been Drill C, held."
    ]
    assert granted_lines(NOTHING, DRILLS, Setting()) == []


def test_nothing_at_all() -> None:
    """With nothing held and nothing ready the answer still stands."""
    lines = next_text(
        Fringe(NOTHING, (), (), ()), None, None, drills=DRILLS, lifts=LIFTS, have=(), items={}, setting=Setting()
    )
    assert lines[0].split() == ["Ready", "now", "from", "nothing,", "your", "gear"]
    assert "Nothing new is ready with this gear." in lines
    assert "Taken for granted" not in lines


def test_empty_hands() -> None:
    """A drill without a load is begun with empty hands."""
    only = Fringe(NOTHING, (ALONE,), (), ())
    lines = next_text(only, None, "full", drills=DRILLS, lifts=LIFTS, have=(), items={}, setting=Setting())
    assert lines[2].startswith(" 1  Drill A, held ")
    assert lines[2].endswith(" empty-handed")
