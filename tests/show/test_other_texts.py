"""Found words, swaps, kits, paths and problems on a terminal."""

import pytest
from small_answers import small_shelf

from kb.ask.barred import Ruled
from kb.ask.find import Findings, Hit
from kb.ask.harder import Harder
from kb.ask.near import Near
from kb.ask.path import path
from kb.ask.swap import Easier, Opens, Swap
from kb.errors import Problem
from kb.kit import Gear
from kb.show.coach_words import moved_on
from kb.show.find_text import find_text
from kb.show.path_text import path_text
from kb.show.problems_text import problems_brief, problems_github, problems_text
from kb.show.setting import Setting
from kb.show.swap_text import kits_text, swap_text
from kb.terms import DrillId, FaultId, ItemId, Load

SHELF = small_shelf("clean")
BAR, STICK = ItemId("bar"), ItemId("stick")
TALL = SHELF.drills[DrillId("tall-clean")]


@pytest.mark.parametrize(("load", "said"), [(Load.LIGHT, True), (Load.STICK, False)])
def test_the_way_out_is_said_with_a_bar(load: Load, *, said: bool) -> None:
    """A drill that can be done with more than a stick says how it is missed."""
    drill = TALL._replace(sections={"Miss": "Let go in front."})
    lines = swap_text(
        Swap(drill, True, (), load, (), (), (), (), ()), drills=SHELF.drills, items=SHELF.items, setting=Setting()
    )
    assert ("  miss  Let go in front." in lines) == said


def test_what_was_found_can_be_gone_on_from() -> None:
    """Each hit with its id, faults first."""
    fault = Hit("fault", "hips-rise-first", "Hips rise first", ("snatch", "clean"), 3)
    lines = find_text(Findings(None, (fault,), (Hit("drill", "start-hold", "Hold the start", (), 1),)), Setting())
    assert lines[:2] == ["Faults", "  hips-rise-first  snatch and clean  Hips rise first"]
    assert lines[3:5] == ["Drills", "  start-hold  Hold the start"]


def test_how_the_first_fault_looks_stands_after_the_list() -> None:
    """So that a coach sees at once whether it is that one, and what else it could be."""
    fault = Hit("fault", "hips-rise-first", "Hips rise first", ("clean",), 3)
    text = {"Looks like": "The seat leaves early.", "Mistaken for": "A high start."}
    lines = find_text(Findings(None, (fault,)), Setting(), first=text)
    at = lines.index("Is it the first? Hips rise first")
    assert lines[at + 1 : at + 3] == ["  The seat leaves early.", "  Look alike: A high start."]


def test_a_caution_is_the_whole_answer() -> None:
    """And nothing found is said to be nothing."""
    assert find_text(Findings("Ask first."), Setting()) == ["Ask first."]
    assert find_text(Findings(None), Setting())[0].startswith("Nothing in the library")


def test_after_a_caution_for_what_is_healed_comes_what_was_found() -> None:
    """First whom to ask, then what the list isn't for, then the list."""
    hit = Hit("fault", "hips-rise-first", "Hips rise first", ("clean",), 3)
    lines = find_text(Findings("Ask first.", (hit,)), Setting())
    assert lines[:2] == ["Ask first.", ""]
    assert lines.index("Faults") > next(n for n, line in enumerate(lines) if line.startswith("That comes first"))


def swapped(*, doable: bool, gear: tuple[Gear, ...] = (), lost: tuple[str, ...] = ()) -> list[str]:
    """A swap, set."""
    near = Near(SHELF.drills[DrillId("front-squat")], (FaultId("hips-rise-first"),), (), (), (), 1)
    opens = Opens(BAR, tuple(list(SHELF.drills)[:6]))
    own = Easier(SHELF.drills[DrillId("front-squat")], "no pull before it", TALL.id)
    further = own._replace(eases="no bar", than=DrillId("front-squat"))
    harder = (Harder(SHELF.drills[DrillId("front-squat")], "no pull"), Harder(TALL, ""))
    more = (opens, opens._replace(drills=(TALL.id,)))
    found = Swap(TALL, doable, gear, Load.STICK, lost, (own, further), harder, (near,), more)
    return swap_text(found, drills=SHELF.drills, items=SHELF.items, setting=Setting())


def test_a_swap_says_first_whether_it_can_be_done() -> None:
    """As it is, with a stand-in and what that loses, or not at all; then what is easier, and what would do instead."""
    assert swapped(doable=False)[0] == "Tall clean can't be done with what is there: it lacks bar."
    assert swapped(doable=True, gear=(Gear(BAR, BAR),))[0] == "Tall clean can be done as it is."
    lines = swapped(doable=True, gear=(Gear(BAR, STICK, "weight"),), lost=("weight",))
    assert lines[:2] == ["Tall clean can be done with stick for bar.", "  lost  weight"]
    said = " ".join(" ".join(lines).split())
    squat, tall = "Front squat, 3 x 4 at 3-1-2-2, rest 75 s", "Tall clean, 4 x 3, rest 50 s"
    until = f"Until {moved_on(SHELF.drills[DrillId('front-squat')].standard)} (`show front-squat`)"
    assert f"Easier, as its entry names them - {squat}: no pull before it {until} - {squat}: no bar" in said
    assert "no bar; easier than front squat" in said
    assert (
        f"Harder, once its standard is met - {squat}: this one eases it: no pull - {tall}: builds on this one" in said
    )
    assert said.count(until) == 1
    assert f"Instead, nearest first - {squat} keeps works on hips rise first" in said
    assert lines[-2].endswith("3 more")
    assert lines[-1] == "  Bar  Tall clean"


def test_what_is_kept_and_lost_is_said_in_short() -> None:
    """The faults together, three of them by name, then the rest."""
    kept = (FaultId("hips-rise-first"), FaultId("bar-loops-out"))
    many = tuple(FaultId(f"fault-{name}") for name in ("a", "b", "c", "d"))
    squat = SHELF.drills[DrillId("front-squat")]
    near = Near(squat, kept, many, ("aims at clean-hang",), ("no load at all",), 1)
    lines = swap_text(
        Swap(TALL, True, (), Load.STICK, (), (), (), (near,), ()),
        drills=SHELF.drills,
        items=SHELF.items,
        setting=Setting(),
    )
    said = " ".join(" ".join(lines).split())
    assert "keeps works on hips rise first and bar loops out; aims at clean hang" in said
    assert "loses fault a, fault b, fault c and 1 more are not worked on; no load at all" in said


@pytest.mark.parametrize(
    ("only", "there", "gone"), [("harder", "Harder,", "Easier,"), ("easier", "Easier,", "Harder,")]
)
def test_one_direction_can_be_asked_for(only: str, there: str, gone: str) -> None:
    """Whether it can be done stays; the rest goes."""
    squat = SHELF.drills[DrillId("front-squat")]
    found = Swap(
        TALL, True, (), Load.STICK, (), (Easier(squat, "no pull", TALL.id),), (Harder(squat, "no pull"),),
        (Near(squat, (), (), (), (), 1),), (Opens(BAR, (TALL.id,)),),
    )  # fmt: skip
    text = "\n".join(swap_text(found, drills=SHELF.drills, items=SHELF.items, setting=Setting(), only=only))
    assert text.startswith("Tall clean can be done")
    assert there in text
    assert gone not in text
    assert "Instead" not in text
    assert "would open" not in text


def test_instead_the_substitutes_come_first() -> None:
    """Before what is harder and what is easier, and no word that it could be done; nor what an item would open."""
    squat = SHELF.drills[DrillId("front-squat")]
    other = next(each for each in SHELF.drills.values() if each.id not in (squat.id, TALL.id))
    easier = (Easier(squat, "no pull", TALL.id), Easier(other, "no bar", TALL.id))
    found = Swap(
        TALL, True, (), Load.STICK, (), easier, (Harder(squat, "no pull"),),
        (Near(squat, (), (), (), (), 1),), (Opens(BAR, (TALL.id,)),), turned_up=TALL._replace(turn_up="eyes shut"),
    )  # fmt: skip
    lines = swap_text(found, drills=SHELF.drills, items=SHELF.items, setting=Setting(), instead=True)
    heads = [line for line in lines if line and not line.startswith(" ")]
    assert heads == [
        "Instead, nearest first",
        "Harder, once its standard is met",
        "Easier, as its entry names them",
    ]
    assert len([line for line in lines if line.startswith(f"  - {other.name}")]) == 1
    assert [line for line in lines if ": no pull" in line] == [next(line for line in lines if "eases it" in line)]


def test_what_is_ruled_out_is_said_and_what_is_left_of_it() -> None:
    """Why, what quiet asks, and the nearest drill's own way of being harder; nothing harder is said to be nothing."""
    squat = SHELF.drills[DrillId("front-squat")]._replace(turn_up="eyes shut")
    found = Swap(
        TALL, False, (), None, (), (), (), (Near(squat, (), (), (), (), 1),), (),
        ruled=Ruled(quiet=True), barred=("its feet land",), turned_up=squat,
    )  # fmt: skip
    lines = swap_text(found, drills=SHELF.drills, items=SHELF.items, setting=Setting())
    assert lines[0] == "Tall clean is ruled out: its feet land."
    assert lines[1].startswith("Quiet: the feet stay down")
    assert "The nearest, harder without more weight" in lines
    assert "  - Front squat: eyes shut" in lines
    bare = found._replace(turned_up=None)
    said = swap_text(bare, drills=SHELF.drills, items=SHELF.items, setting=Setting(), only="harder")
    assert said[-1] == "Nothing harder is quiet with what is there."


def test_kits_say_how_far_they_go() -> None:
    """Drills, faults, and what is in them."""
    assert kits_text({"two": ({BAR, STICK}, 3, 1)}, SHELF.items, Setting()) == ["two  3 drills, 1 faults  bar, stick"]


def test_a_path_tells_when_to_move_on() -> None:
    """After its chart; from nothing or from what is held; what isn't proved is said."""
    found = path(SHELF, have=SHELF.kits["full"])
    lines = path_text(found, "full", set(), Setting(), from_nothing=True)
    assert lines[0].endswith(f"from nothing, full kit, {len(found.entries)} drills, 40 min in all")
    assert " 1  Hold the start: 4 of 4: back flat" in " ".join(lines)
    unsure = path_text(found._replace(gap=0.1), None, set(), Setting(), from_nothing=False)
    assert "from what is held, your gear" in unsure[0]
    assert any("could cost 10% less" in line for line in unsure)


PROBLEM = Problem(file="drills/clean/a.md", line=3, code="some-code", message="It's wrong, 100 %.", help="Mend: it.")


def test_a_problem_on_a_terminal_has_its_line_and_help() -> None:
    """And all are counted."""
    lines = problems_text([PROBLEM], lambda _: "  name: a", Setting(60))
    assert lines == [
        "drills/clean/a.md:3  some-code",
        "  It's wrong, 100 %.",
        "  | name: a",
        "  help: Mend: it.",
        "",
        "1 problem in 1 file; `drillpath check --explain CODE` says more of one.",
    ]
    two = [PROBLEM, Problem(file="b.md", line=1, code="c", message="m")]
    assert problems_text(two, lambda _: "", Setting())[-1].startswith("2 problems in 2 files")
    assert problems_text([], lambda _: "", Setting()) == ["No problems."]


def test_a_problem_in_a_pipe_is_one_line() -> None:
    """File, line, code, sentence, help."""
    assert problems_brief([PROBLEM]) == ["drills/clean/a.md:3: some-code: It's wrong, 100 %. Mend: it."]
    assert problems_brief([Problem(file="b.md", line=1, code="c", message="m")]) == ["b.md:1: c: m"]


def test_a_problem_for_github_is_an_annotation() -> None:
    """With its signs escaped and the way to the library before the file."""
    assert problems_github([PROBLEM], "lib/") == [
        "::error file=lib/drills/clean/a.md,line=3,title=some-code::It's wrong, 100 %25. Mend: it."
    ]
