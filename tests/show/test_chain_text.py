"""A chain on a terminal: what stands where, and what is said only where it applies."""

import pytest
from handmade import drill
from small_answers import small_chain, small_shelf

from kb.ask.alone import alone
from kb.ask.chain import Chain
from kb.ask.instead import Instead, instead
from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.rehearse import Opener, Rehearsal, rehearse
from kb.ask.why import LeftOut, OtherCause, why
from kb.errors import BadInput
from kb.kit import Gear
from kb.show.care import LOWERED, NO_REVIEW, USUAL, Due, begun, cares
from kb.show.chain_said import AT_WEIGHT, HEAVIER, NO_SPLIT, UNTIL, UNTOLD
from kb.show.chain_text import chain_text
from kb.show.coach_words import KEPT, dosed, human
from kb.show.entry_lines import gear_said
from kb.show.first_text import first_text
from kb.show.instead_text import instead_text
from kb.show.look_first import first_said
from kb.show.no_chain_text import no_chain_text, session_said
from kb.show.setting import Setting
from kb.show.tell_lines import only_heavy_said
from kb.show.telling import Telling
from kb.show.why_text import why_text
from kb.terms import Catch, Cause, DrillId, Fault, FaultId, ItemId, LiftId, Load, LoadFrom, PositionId, Stage, Tell

BAR, STICK = ItemId("bar"), ItemId("stick")


def told(found: Chain, *, named: bool = False, kit: str | None = "full", width: int = 80) -> str:
    """A chain as one text, its lines one after another."""
    return "\n".join(chain_text(found, kit, Setting(width), named=named))


def flat(text: str) -> str:
    """A text without its line ends."""
    return " ".join(text.split())


def test_the_answer_comes_first_and_the_rest_in_its_order() -> None:
    """Title, cause, tells, chart, drills, cautions, and that nobody has reviewed it."""
    text = told(small_chain("hips-rise-first"))
    places = [
        text.index(part)
        for part in (
            "Hips rise first",
            "clean, light bar, full kit, 17 min",
            "Because: lost back angle (position sense, the commonest cause).",
            "To tell the causes apart (60 s)",
            "where it shows",
            " 1  Hold the start                                                   work, 4 min",
            " 4  Clean                                                            work, 9 min",
            USUAL.split(".")[0],
            NO_REVIEW,
        )
    ]
    assert places == sorted(places)


def with_others(found: Chain, *, named: bool = False) -> str:
    """A chain with what its fault's other causes call for, as one text."""
    return "\n".join(chain_text(found, "full", Setting(80), named=named, others=instead(found.matter)))


def test_how_to_tell_the_causes_apart_comes_before_the_drills_unless_the_cause_was_named() -> None:
    """Then the coach has judged it, and the checks stand with what the other causes call for, after the drills."""
    text = with_others(small_chain("hips-rise-first"))
    assert "If it is another, its drills stand after these." in text
    assert text.index("To tell the causes apart") < text.index("where it shows") < text.index("If it is another cause")
    text = with_others(small_chain("hips-rise-first", cause="hips-set-low"), named=True)
    assert "Because: hips set low (set up)." in text
    assert text.index("where it shows") < text.index("To tell the causes apart") < text.index("If it is another cause")


def test_each_other_cause_has_its_drills_in_order_and_what_stands_above_is_not_told_again() -> None:
    """So that whoever finds on the floor that it is another can go on from the same page."""
    found = small_chain("hips-rise-first")
    text = with_others(found)
    after = flat(text[text.index("If it is another cause") :])
    for other in instead(found.matter):
        assert other.chain is not None
        at = after.index(human(other.cause.id).capitalize())
        for entry in other.chain.routes[0].entries:
            at = after.index(f"{entry.drill.name}: ", at)
    assert "as above" in after


def test_another_cause_that_has_no_chain_here_says_why() -> None:
    """In the words of the one who found that there is none."""
    cause = small_chain("hips-rise-first").matter.fault.causes[1]
    (line,) = instead_text([Instead(cause, None, "needs a bar")], [], set(), Setting(100))[2:]
    assert line == f"  - {human(cause.id).capitalize()} ({human(cause.kind)}): no chain here; needs a bar."


def test_what_to_keep_to_and_to_look_at_first_come_before_the_drills() -> None:
    """And what shows that the fault is gone stands after the standard; where nothing is said, nothing is printed."""
    found = small_chain("hips-rise-first")
    assert "In every drill" not in told(found)
    assert "Look first" not in told(found)
    cause = found.matter.cause._replace(throughout="Start from blocks.")
    fault = found.matter.fault._replace(sections={"Look first": "- **Soft shoes**: off with them."})
    (route,) = found.routes
    entries = (route.entries[0]._replace(gone="seat below the shoulders"), *route.entries[1:])
    matter = found.matter._replace(fault=fault, cause=cause, worked_cause=cause)
    text = told(found._replace(matter=matter, routes=(route._replace(entries=entries),)))
    parts = (
        "Because: ",
        f"In every drill: Start from blocks. {KEPT.split('(')[0]}",
        "Look first",
        "Soft shoes: off",
        "1  Hold",
    )
    places = [flat(text).index(flat(part)) for part in parts]
    assert places == sorted(places)
    assert f"{entries[0].drill.standard.seen}; and seat below the shoulders" in flat(text)


def test_what_fits_what_was_seen_leads() -> None:
    """By its number: before the cause, and no longer among the rest; the rest keep their numbers."""
    found = small_chain("hips-rise-first")
    items = "- **Soft shoes**: off with them.\n- **Tired**: singles."
    matter = found.matter._replace(fault=found.matter.fault._replace(sections={"Look first": items}))
    telling = Telling(first_said(matter.fault, 1), 1, cause_named=True)
    lines = chain_text(found._replace(matter=matter), "full", Setting(80), named=True, telling=telling)
    text = "\n".join(lines)
    assert text.index("First: Soft shoes: off with them. If that mends it") < text.index("Because: ")
    assert text.count("Soft shoes") == 1
    assert "  2. Tired: singles." in text


def test_what_leads_leads_alone_until_a_cause_is_found() -> None:
    """No cause is taken: the checks, then what every cause calls for, each drill told once and then named."""
    found = small_chain("hips-rise-first")
    items = "- **Soft shoes**: off with them.\n- **Tired**: singles."
    matter = found.matter._replace(fault=found.matter.fault._replace(sections={"Look first": items}))
    telling = Telling(first_said(matter.fault, 1), 1, helped="a stop", weeks=3)
    others = list(instead(found.matter))
    lines = first_text(found._replace(matter=matter), "full", Setting(80), others=others, telling=telling)
    text = flat("\n".join(lines))
    parts = (
        "First: Soft shoes",
        "Helped at once: a stop",
        "Week 1",
        "2. Tired: singles",
        "If it stays, what each",
        USUAL,
    )
    places = [text.index(flat(part)) for part in parts]
    assert places == sorted(places)
    assert "Because:" not in text
    causes = [found.matter.cause, *(other.cause for other in others)]
    assert all(f"{human(cause.id).capitalize()} (" in text for cause in causes)
    standard = flat(found.routes[0].entries[-1].drill.standard.seen)
    assert text.count(standard) == 1
    assert NO_REVIEW in text


def test_where_a_lifter_is_told_of_and_no_cause_the_checks_lead() -> None:
    """Then what to begin with until they have found another; where a cause is named they stand below."""
    found = small_chain("hips-rise-first")
    others = list(instead(found.matter))
    telling = Telling(checks_first=True)
    lines = chain_text(found, "full", Setting(80), named=False, others=others, telling=telling)
    text = flat("\n".join(lines))
    places = [text.index(part) for part in (UNTOLD, "To tell the causes apart", UNTIL)]
    assert places == sorted(places)
    assert "Because:" not in text
    named = flat("\n".join(chain_text(found, "full", Setting(80), named=True, others=others, telling=telling)))
    assert named.index("Because:") < named.index("To tell the causes apart")
    assert UNTOLD not in named


def test_a_number_that_there_is_not_is_refused() -> None:
    """With how many there are."""
    fault = small_chain("hips-rise-first").matter.fault._replace(sections={"Look first": "- **Soft shoes**: off."})
    with pytest.raises(BadInput, match=r"--first 3: .* has 2 things to look at first"):
        first_said(fault, 3)


def test_each_drill_says_what_a_coach_needs() -> None:
    """How much, what changed, what to say, when to move on, with what, what to mind."""
    text = told(small_chain("hips-rise-first"))
    drill_lines = text[text.index(" 2  Slow lift-off to the knee   ") :].split("\n\n")[0].splitlines()
    assert drill_lines == [
        " 2  Slow lift-off to the knee                                        work, 4 min",
        "    Do       3 x 4 at 3-1-4-1, rest 40 s, light bar, stick first",
        "    Changed  on to the knee and done slowly",
        '    Say      "Push the floor, don\'t pull."',
        "    Move on  when 4 of 4: seat and shoulders rise together, bar within a finger",
        "             of the shin, four even counts",
        "    Gear     bar, discs",
        "    Mind     back",
    ]


def test_a_check_says_what_to_do_when_it_fails() -> None:
    """It becomes the work."""
    text = flat(told(small_chain("hips-rise-first")))
    assert "Move on when 3 of 3 show this: seat and shoulders leave together" in text
    assert "else work on it, 4 x 3, rest 60 s" in text
    assert "when all 3 show this:" in flat(told(small_chain("clean-bar-crashes")))


def test_how_to_miss_comes_before_the_first_full_catch_and_once() -> None:
    """Of the lift that is missed that way; nobody touches a missed lift."""
    text = told(small_chain("clean-bar-crashes"))
    assert text.count("! First, how to miss.") == 1
    assert text.index("! First, how to miss.") < text.index(" 1  Tall clean                  ")
    assert "Nobody touches a missed" in text


def test_where_nothing_may_be_dropped_nobody_is_told_to_let_it_fall() -> None:
    """The way out is to lower it, said once whatever the lift; what goes behind is let go even there."""
    falls = drill("falls")._replace(sections={"Miss": "Let it fall. Nobody touches it."})
    gear = (Gear(ItemId("drop-floor"), BAR, "nothing may be dropped"),)
    seen = begun(gear)
    due = Due(falls, Load.LIGHT, Catch.FULL, gear)
    assert LOWERED in cares(due, seen)
    assert not any("way out" in said or "miss." in said for said in cares(due, seen))
    assert "First, how to miss. Let it fall. Nobody touches it." in cares(due, begun(()))


def test_a_stick_needs_no_words_about_missing() -> None:
    """Nor about collars; what serves for the bar is named, and what that loses, once."""
    text = told(small_chain("clean-bar-crashes", kit="stick"), kit="stick")
    assert "how to miss" not in text
    assert "Collars" not in text
    assert "Gear     stick for bar" in text
    assert text.count("nothing to push against") == 1


def test_an_earlier_fault_is_what_the_chain_works_on() -> None:
    """And that is said."""
    text = told(small_chain("bar-drifts-forward", cause="made-by-hips-rise"), named=True)
    assert "So the chain works on what comes before it: Hips rise first (lost back angle)." in flat(text)


def test_what_is_slow_is_said_to_be() -> None:
    """Mobility at the top, right after why; strength with what to do after the lifts, each drill in full."""
    stiff = told(small_chain("jerk-dips-forward", "jerk", cause="stiff-ankles"), named=True)
    assert stiff.count("Mobility comes slowly: do the opening on most days") == 1
    assert stiff.index("Because") < stiff.index("Mobility comes slowly") < stiff.index("where it shows")
    assert "met without weight" in flat(stiff)
    text = told(small_chain("hips-rise-first", cause="weak-legs-off-floor"))
    assert "Mobility" not in text
    strength = flat(text)
    assert "over weeks: two or three times a week, after the lifts or on a day between, light" in strength
    assert "The chain keeps the lift in order meanwhile." in strength
    squat = text[text.index(" -  Back squat") :].split("\n\n")[0]
    for label in ("Do  ", "Say  ", "Move on  ", "Gear  ", "Mind  "):
        assert f"    {label}" in squat
    assert "rest" in squat
    assert "working weight" in squat


def test_strengthening_past_the_third_is_named() -> None:
    """So is what can't be begun yet; a chain for strength without any says what is the work."""
    found = small_chain("hips-rise-first", cause="weak-legs-off-floor")
    tall = found.matter.shelf.drills[DrillId("tall-clean")]
    assert "Others: Tall clean." in told(found._replace(finish=(*found.finish, tall)))
    waiting = told(found._replace(finish=(tall,), strengthen=()))
    assert "Once what they build on is held: Tall clean." in waiting
    none = flat(told(found._replace(finish=(), strengthen=())))
    assert "Strength comes slowly, over weeks: the drills above that are work" in none
    other = small_chain("hips-rise-first")
    assert "After training, for strength: - Back squat" in flat(
        told(other._replace(finish=found.finish, strengthen=found.strengthen))
    )


def test_a_share_of_the_best_is_said_at_working_weight() -> None:
    """Where the entry of a strengthening drill names it; never for a light bar."""
    found = small_chain("hips-rise-first", cause="weak-legs-off-floor")
    (squat,) = found.strengthen
    shared = squat._replace(drill=squat.drill._replace(load_from=LoadFrom(LiftId("clean"), (80, 90))))
    assert "working weight, 80 to 90 % of the best clean" in flat(told(found._replace(strengthen=(shared,))))
    light = shared._replace(load=Load.LIGHT)
    assert "80 to 90" not in told(found._replace(strengthen=(light,)))


def test_too_much_for_one_sitting_is_cut() -> None:
    """Each sitting begins with the last drill of the one before."""
    text = flat(told(small_chain("hips-rise-first", seconds=12 * 60)))
    assert "2 sittings: drills 1 to" in text
    assert "Each begins with the last drill of the one before, as a check." in text


def test_what_isnt_proved_is_said() -> None:
    """With its gap."""
    found = small_chain("hips-rise-first")
    route = found.routes[0]._replace(gap=0.04)
    text = flat(told(found._replace(routes=(route,))))
    assert "Not proved the best order: a better one could cost 4% less." in text


def test_another_way_tells_only_what_is_new() -> None:
    """Its chart, and the drills that the first way hasn't."""
    found = small_chain("clean-bar-crashes")
    entries = found.routes[0].entries
    other = found.routes[0]._replace(entries=(entries[0]._replace(load=Load.STICK), *entries[2:]), proved=False)
    text = told(found._replace(routes=(found.routes[0], other)))
    second = text[text.index("Way 2, ") :]
    assert second.count("Move on  ") == 1


def test_gear_of_ones_own_and_working_weight() -> None:
    """What was listed has no kit's name; working weight asks for the longer caution."""
    text = told(small_chain("clean-bar-crashes", load=Load.WORKING), kit=None)
    assert "clean, working weight, your gear" in text
    assert "blood pressure" in text


def test_with_another_kind_of_weight_it_is_no_bar() -> None:
    """Light, whatever it is."""
    found = small_chain("hips-rise-first")
    entries = tuple(entry._replace(gear=()) for entry in found.routes[0].entries)
    text = told(found._replace(routes=(found.routes[0]._replace(entries=entries),)))
    assert "rest 40 s, light weight" in text
    assert "Gear" not in text


@pytest.mark.parametrize("width", [40, 60, 80, 100])
@pytest.mark.parametrize("lift", ["clean", "clean-and-jerk"])
def test_every_line_fits(width: int, lift: str) -> None:
    """At any width that can be read."""
    text = told(small_chain("clean-bar-crashes", lift), width=width)
    assert max(map(len, text.splitlines())) <= width


def test_no_chain_says_what_can_be_rehearsed() -> None:
    """Each as a drill of a chain is told, the others by name; the session of it; what would open a chain."""
    shelf = small_shelf("clean")
    matter = matter_of(shelf, ChainQuestion(fault=FaultId("clean-bar-crashes"), have=shelf.kits["stick"]))
    ready = rehearse(matter)
    tall = shelf.drills[DrillId("tall-clean")]
    entry = alone(matter, tall, Load.STICK)
    lines = no_chain_text(
        shelf,
        ready._replace(
            drills=(tall, shelf.drills[shelf.lift.drill]),
            entries=(entry,),
            session=(tall.id,),
            would_open=(Opener((BAR,)), Opener((STICK,))),
        ),
        "home",
        Setting(),
    )
    text = "\n".join(lines)
    assert "in this order, though nothing here shows whether the fault is gone:" in flat(text)
    assert " 1  Tall clean   " in text
    assert f"Do {dosed(tall, Setting())}, stick".replace("\N{NO-BREAK SPACE}", " ") in flat(text)
    assert "    Move on  when " in text
    assert "    Gear     stick for bar" in text
    assert "    Mind     " in text
    assert "1 more, in their order: Clean." in text
    assert "  drillpath session --drills tall-clean --lift clean --kit home --minutes 20" in lines
    assert "A chain needs only with the home kit: bar or stick." in lines
    listed = session_said(shelf, ready._replace(session=(tall.id,)), None)
    assert listed is not None
    assert f"--have {','.join(sorted(shelf.kits['stick']))} " in listed
    first = no_chain_text(shelf, Rehearsal((), (Opener(prerequisite=tall.id),)), None, Setting())
    assert first[0] == "To hold this first would open a chain: Tall clean."
    assert no_chain_text(shelf, None, "home", Setting()) == []
    assert no_chain_text(shelf, Rehearsal((), ()), "home", Setting()) == []


def test_gear_is_fetched_once() -> None:
    """A stick for a bar and discs is one stick; where the bar is there, the stick is simply lighter."""
    found = small_chain("clean-bar-crashes", kit="stick")
    items = found.matter.shelf.items
    gear = found.routes[0].entries[-1].gear
    assert gear_said(gear, frozenset(), items) == "stick for bar, discs and floor for dropping"
    assert gear_said(gear, frozenset({"bar", "discs", "drop-floor"}), items) == "stick"


def due(**of: object) -> list[str]:
    """What is due before a drill of these fields."""
    asked = {"load": Load.LIGHT, "catch": Catch.NONE, "gear": (), **of}
    fields = {key: asked.pop(key) for key in list(asked) if key not in Due._fields}
    return cares(Due(drill("a", **fields), **asked), set())  # type: ignore[arg-type]


def gear(*items: str) -> tuple:
    """Gear that is there."""
    from kb.kit import Gear

    return tuple(Gear(ItemId(item), ItemId(item)) for item in items)


def test_cautions_stand_where_they_apply_and_nowhere_else() -> None:
    """Each of PAGES at its own place."""
    assert due() == []
    assert due(gear=gear("bar")) == ["Collars on, 2 m clear around the bar, dry shoes."]
    assert "a look at the headroom." in due(gear=gear("bar"), cautions=("head-clearance",))[0]
    assert due(gear=gear("bar"), load=Load.STICK) == []
    assert "Two misses running" in due(catch=Catch.POWER)[0]
    assert due(gear=gear("broom"), load=Load.STICK)[0].startswith("No socks on a hard floor; never lean or hang")
    assert due(gear=gear("partner"), load=Load.NONE)[0].startswith("Ask before touching.")
    assert due(aid=("hand",), load=Load.NONE)[0].startswith("Ask before touching.")
    assert "heels only without load" in due(gear=gear("wedge"), load=Load.STICK)[0]
    assert due(gear=gear("wedge")) == []
    behind = {"jerk": PositionId("behind-neck-rack")}
    assert due(target_position=behind)[0] == "Never drop the bar onto the neck."


def test_what_a_miss_says_itself_isnt_said_twice() -> None:
    """Of two misses, and that nobody touches the bar."""
    text = {"Miss": "Push it away. Nobody helps. Two misses running end it."}
    assert due(catch=Catch.FULL, sections=text) == [f"First, how to miss. {text['Miss']}"]


def test_a_caution_is_said_once() -> None:
    """In one answer."""
    seen: set[str] = set()
    bar = Due(drill("a"), Load.LIGHT, Catch.NONE, gear("bar"))
    assert cares(bar, seen)
    assert cares(bar, seen) == []


def test_the_reasons_add_up() -> None:
    """Steps, time and strays are the cost; each step by what changed."""
    found = small_chain("hips-rise-first")
    text = flat("\n".join(why_text(found, why(found.matter, found.routes[0]), Setting())))
    cost, seconds = found.routes[0].cost, found.routes[0].seconds
    assert f"Cost {cost}, in seconds of a lifter's time: {(cost - seconds) // 300} of change at 300 each" in text
    assert "2 Slow lift-off to the knee: 2 (on to the knee 1, done slowly 1)" in text
    assert "With another cause - hips set low:" in text


def test_every_kind_of_reason_is_put_in_words() -> None:
    """What was left out, strays, preparation, and what other causes change."""
    found = small_chain("jerk-dips-forward", "jerk", cause="stiff-ankles")
    shelf = found.matter.shelf
    causes = found.matter.fault.causes
    known = next(iter(shelf.drills))
    reasons = why(found.matter, found.routes[0])._replace(
        strays=600,
        left_out=(LeftOut(shelf.drills[known], "the kit has not what it needs"),),
        other_causes=(
            OtherCause(causes[0], (), (), "nothing for it"),
            OtherCause(causes[0], (), ()),
            OtherCause(causes[0], (known,), (known,)),
        ),
    )
    text = flat("\n".join(why_text(found, reasons, Setting())))
    assert "600 for drills that neither work on the fault nor show it" in text
    assert "out of preparation" in text
    assert f"{shelf.drills[known].name}: the kit has not what it needs." in text
    assert "no chain; nothing for it." in text
    assert "the same drills." in text
    assert f"adds {shelf.drills[known].name}; does without {shelf.drills[known].name}." in text


def test_a_held_check_shows_it_or_not() -> None:
    """A hold has no repetitions to count."""
    found = small_chain("hips-rise-first")
    held = found.routes[0].entries[0]._replace(work=False)
    text = flat(told(found._replace(routes=(found.routes[0]._replace(entries=(held,)),))))
    assert "Move on when it shows this: back flat" in text
    assert held.drill.stage is Stage.POSITION


def test_a_chain_at_weight_says_where_to_begin_and_a_jerk_what_ends_it_without_a_split() -> None:
    """At a light bar it says instead how to go on; other lifts have no split to go without."""
    clean = small_chain("hips-rise-first", load=Load.WORKING)
    assert flat(AT_WEIGHT) in flat(told(clean))
    assert flat(HEAVIER) not in flat(told(clean))
    assert flat(HEAVIER) in flat(told(small_chain("hips-rise-first")))
    assert flat(NO_SPLIT) not in flat(told(clean))
    assert flat(NO_SPLIT) in flat(told(small_chain("jerk-dips-forward", "jerk")))


def test_a_light_check_says_what_holds_where_the_fault_is_heavy() -> None:
    """Only beside a check that asks for a light bar."""
    tell = Tell(do="Two jerks with a light bar.", look="Is it gone?", seconds=20, yes=("one",), no=("two",))
    fault = Fault(
        FaultId("a-b"), "A", (), (), causes=(Cause("one", "nerve", ""), Cause("two", "timing", "")), tells=(tell,)
    )
    assert "least weight that shows it" in only_heavy_said(fault)
    assert only_heavy_said(fault._replace(tells=(tell._replace(do="Two jerks with a stick."),))) == ""
