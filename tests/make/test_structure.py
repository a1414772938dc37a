"""What `load` must find in broken libraries, case by case, and that every rule explains itself."""

import re
from pathlib import Path

import pytest
from broken_cases import BROKEN, Expected, cases, laid_over, sound

from kb.errors import Problem
from kb.make.entry_codes import ENTRY_CODES
from kb.make.files import is_id
from kb.make.library import Library, load
from kb.make.structure.circles import circles
from kb.make.structure.table import RULES
from kb.terms import Dose, Drill, DrillId, LiftId, Stage, Standard

EXPLAINED = ENTRY_CODES | {rule.name: rule.explanation for rule in RULES}
CASES = {case: rows for case, rows in cases().items() if all(row.code in EXPLAINED for row in rows)}


@pytest.fixture(scope="session")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """One file in which the small library is kept parsed, so that each case parses only what it changes."""
    return tmp_path_factory.mktemp("kept") / "entries.json"


def test_the_small_library_is_sound() -> None:
    """What the cases are laid over has no structural problem of its own."""
    assert sound().problems == ()


def test_every_case_has_a_row_and_every_row_a_case() -> None:
    """cases.tsv and the folder say the same."""
    there = {path.stem if path.suffix == ".md" else path.name for path in BROKEN.iterdir() if path.suffix != ".tsv"}
    assert there == set(cases())


@pytest.mark.parametrize("case", CASES)
def test_case(case: str, tmp_path: Path, kept: Path) -> None:
    """A case shows exactly its rows' problems, at their lines, and no other structural one."""
    library = load(laid_over(case, tmp_path), parsed=kept)
    assert {_where(problem) for problem in library.problems} == {_row(row) for row in CASES[case]}
    for problem in library.problems:
        assert problem.message[0].isupper() or problem.message[0] in "`0123456789"
        assert problem.message.endswith(".")
        assert not problem.help or problem.help[-1] in ".?"


def _where(problem: Problem) -> tuple[str, int, str]:
    return problem.file, problem.line, problem.code


def _row(row: Expected) -> tuple[str, int, str]:
    return row.entry, row.line, row.code


def test_every_code_has_a_case() -> None:
    """Each structural code is shown at least once; what needs a link or a broken file has a hostile test."""
    elsewhere = {"no-library", "symlink", "unreadable", "too-big", "bad-encoding", "bad-character"}
    assert set(EXPLAINED) - elsewhere == {row.code for rows in CASES.values() for row in rows}


@pytest.mark.parametrize(("code", "text"), EXPLAINED.items())
def test_every_code_is_explained(code: str, text: str) -> None:
    """An explanation says what is checked, why it matters, what is wrong and what is right."""
    assert is_id(code)
    first, *_ = text.split("\n\n")
    assert first.replace("\n", " ").strip().endswith((".", ":"))
    assert "Why it matters: " in text
    wrong, right = text.split("Wrong:\n\n")[1].split("Right:\n\n")
    assert re.match(r"    \S", wrong)
    assert re.match(r"    \S", right)


def test_rules_are_ordered_and_named_once() -> None:
    """The table's order is its own, and no two rules share a code."""
    assert [rule.order for rule in RULES] == list(range(len(RULES)))
    assert len({rule.name for rule in RULES}) == len(RULES)


def test_help_names_the_nearest_right_value(tmp_path: Path, kept: Path) -> None:
    """An unknown name is answered with the one that was likely meant."""
    (problem,) = load(laid_over("cause-unknown", tmp_path), parsed=kept).problems
    assert problem.message == "The fault `hips-rise-first` has no cause `weak-legs`."
    assert problem.help == "Did you mean `weak-legs-off-floor`?"


def test_help_knows_a_renamed_entry(tmp_path: Path, kept: Path) -> None:
    """A name that an entry keeps as an old id leads to the new one."""
    root = laid_over("prerequisite-unknown", tmp_path)
    hold = root / "drills" / "pull" / "start-hold.md"
    hold.write_text(hold.read_text().replace("also: [", "also: [start-hould, "))
    (problem,) = load(root, parsed=kept).problems
    assert problem.help == "It is called `start-hold` now."


def test_a_circle_shows_the_shortest_way_round(tmp_path: Path, kept: Path) -> None:
    """Of a tangle only the shortest circle is told, and not the drills that merely wait for it."""
    (problem,) = load(laid_over("prerequisites-round", tmp_path), parsed=kept).problems
    assert problem.message.startswith("`a-drill` needs `b-drill`, which needs `c-drill`, which needs `a-drill`:")


def test_circles_told_apart_and_without_end() -> None:
    """Two separate circles are both told; a large ring is found, and so is one behind many that only lead to it."""
    assert list(circles({"a": ["b"], "b": ["a"], "c": ["d"], "d": ["c", "a"]})) == [("a", "b"), ("c", "d")]
    ring = {str(n): [str((n + 1) % 2000)] for n in range(2000)}
    ((*found,),) = circles(ring)
    assert len(found) == 2000
    leading = {f"a{n:04}": ["z1"] for n in range(400)} | {"z1": ["z2"], "z2": ["z1"]}
    assert list(circles(leading)) == [("z1", "z2")]


@pytest.mark.parametrize(
    ("broken", "names"),
    [
        ("drills/faults/hips-rise-first.md", "a drill's faults, a look-alike, an earlier fault"),
        ("drills/pull/start-hold.md", "prerequisites, tells"),
        ("drills/lifts/clean.md", "lifts, parts, reach, phases, the lift of parts"),
        ("drills/positions/clean-start.md", "timeline, target"),
        ("drills/equipment/stick.md", "equipment, stand-ins, the stick of a kit"),
        ("drills/jerk/full-jerk.md", "the lift's drill, the part of a complex"),
    ],
)
def test_what_names_a_broken_entry_isnt_wrong(broken: str, names: str, tmp_path: Path, kept: Path) -> None:
    """An entry that can't be used gives its own problem, and none in those that name it."""
    root = laid_over("heading-twice", tmp_path)
    (root / "drills/pull/extra-drill.md").unlink()
    (root / broken).write_text("---\nname: [\n---\n")
    assert {(problem.file, problem.code) for problem in load(root, parsed=kept).problems} == {(broken, "bad-yaml")}, (
        names
    )


def test_rules_take_a_library_made_by_hand() -> None:
    """Records without files and sources, as tests and programs make them, are judged all the same."""
    drill = Drill(
        id=DrillId("lone"),
        name="Lone",
        lifts=(LiftId("nowhere"),),
        stage=Stage.SEGMENT,
        dose=Dose(),
        standard=Standard(count=1, of=1, seen="it"),
    )
    library = Library(root=Path(), drills={drill.id: drill})
    found = [problem for rule in RULES for problem in rule.function(library)]
    assert {problem.code for problem in found} == {"unknown-lift", "impossible-dose"}
    assert {(problem.file, problem.line) for problem in found} == {("lone", 1)}


def test_a_drill_may_wait_for_one_of_a_circle_if_there_is_another_way(tmp_path: Path, kept: Path) -> None:
    """A circle through an inner list that has a way in is no problem."""
    root = laid_over("prerequisites-round-any-of", tmp_path)
    first = root / "drills" / "pull" / "a-drill.md"
    first.write_text(first.read_text().replace("[[b-drill, c-drill]]", "[[b-drill, start-hold]]"))
    assert load(root, parsed=kept).problems == ()


def test_an_easier_version_may_need_the_harder_one_if_there_is_another_way(tmp_path: Path, kept: Path) -> None:
    """What it eases may stand in an inner list beside something else."""
    root = laid_over("easier-needs-harder", tmp_path)
    third = root / "drills" / "pull" / "c-drill.md"
    third.write_text(third.read_text().replace("[[a-drill]]", "[[a-drill, start-hold]]"))
    assert load(root, parsed=kept).problems == ()
