"""What `check` must find in broken libraries, case by case, and that every code explains itself."""

import re
from dataclasses import fields, replace
from pathlib import Path

import pytest
from broken_cases import Expected, cases, laid_over, sound

from kb.check import table
from kb.check.table import CONTENT, GRAPH, check, explain, explanations
from kb.errors import BadInput, Problem
from kb.make.entry_codes import ENTRY_CODES
from kb.make.files import is_id
from kb.make.library import Library, load
from kb.make.structure.table import RULES

STRUCTURAL = [*ENTRY_CODES, *(rule.name for rule in RULES)]
CONTENT_CODES, GRAPH_CODES = {rule.name for rule in CONTENT}, {rule.name for rule in GRAPH}
OURS = {case: rows for case, rows in cases().items() if all(row.code in CONTENT_CODES | GRAPH_CODES for row in rows)}


@pytest.fixture(scope="session")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """One file in which the small library is kept parsed, so that each case parses only what it changes."""
    return tmp_path_factory.mktemp("kept") / "entries.json"


def _where(problem: Problem) -> tuple[str, int, str]:
    return problem.file, problem.line, problem.code


def _row(row: Expected) -> tuple[str, int, str]:
    return row.entry, row.line, row.code


def _content(library: Library) -> list[Problem]:
    return [problem for rule in CONTENT for problem in rule.function(library)]


def test_the_small_library_is_clean() -> None:
    """What the cases are laid over has no problem of any sort."""
    assert check(sound()) == ()


@pytest.mark.parametrize("case", OURS)
def test_case(case: str, tmp_path: Path, kept: Path) -> None:
    """A case of content shows exactly its rows' content problems; a case of the graph those and no others at all."""
    library = load(laid_over(case, tmp_path), parsed=kept)
    assert library.problems == ()
    of_content = {row.code for row in OURS[case]} <= CONTENT_CODES
    problems = _content(library) if of_content else check(library)
    assert {_where(problem) for problem in problems} == {_row(row) for row in OURS[case]}
    for problem in problems:
        assert problem.message[0].isupper() or problem.message[0] in "`0123456789"
        assert problem.message.endswith(".")
        assert problem.help.endswith((".", "?"))


def test_there_are_cases_enough_and_every_code_has_one() -> None:
    """At least sixty broken libraries in all, and each code of content and graph is shown by one."""
    assert len(cases()) >= 60
    assert {row.code for rows in OURS.values() for row in rows} == CONTENT_CODES | GRAPH_CODES


def test_structural_problems_come_first_and_stop_the_graph(
    tmp_path: Path, kept: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With a structural problem the content is still judged, and nothing is asked of the graph."""
    root = laid_over("cues-four", tmp_path)
    (root / "drills/pull/another-drill.md").write_text("---\nname: Another\n---\n", encoding="utf-8")
    monkeypatch.setattr(table, "answers", lambda _: pytest.fail("asked"))
    library = load(root, parsed=kept)
    found = check(library)
    assert library.problems
    assert found[: len(library.problems)] == library.problems
    assert [problem.code for problem in found[len(library.problems) :]] == ["cue-count"]


def test_problems_stand_by_file_and_line(tmp_path: Path, kept: Path) -> None:
    """What isn't structural is sorted by file and line, content and graph together."""
    root = laid_over("drill-unused", tmp_path)
    text = (root / "drills/squat/air-squat.md").read_text(encoding="utf-8")
    (root / "drills/squat/air-squat.md").write_text(text.replace("## Why", "## Miss", 1), encoding="utf-8")
    found = check(load(root, parsed=kept))
    assert [problem.code for problem in found] == ["unused-drill", "missing-section"]
    assert list(found) == sorted(found)


def test_a_folder_without_a_library_has_one_problem(tmp_path: Path) -> None:
    """Nothing else is said where there is nothing to judge."""
    assert [problem.code for problem in check(load(tmp_path))] == ["no-library"]


def test_content_rules_bear_whatever_is_missing() -> None:
    """Each entry in turn is taken away, as if it couldn't be used: no rule fails for it."""
    library = sound()
    for field in ("lifts", "positions", "faults", "items", "drills"):
        assert field in {each.name for each in fields(library)}
        records = getattr(library, field)
        for gone in records:
            _content(replace(library, **{field: {id_: record for id_, record in records.items() if id_ != gone}}))
        _content(replace(library, **{field: {}}))
    _content(replace(library, sources={}))


@pytest.mark.parametrize("rule", [*CONTENT, *GRAPH], ids=lambda rule: rule.name)
def test_every_rule_explains_itself(rule: table.ContentRule | table.GraphRule) -> None:
    """An explanation says what is checked, why it matters, what is wrong and what is right."""
    assert is_id(rule.name)
    first, *_ = rule.explanation.split("\n\n")
    assert first.replace("\n", " ").strip().endswith(".")
    assert "Why it matters: " in rule.explanation
    wrong, right = rule.explanation.split("Wrong:\n\n")[1].split("Right:\n\n")
    assert re.match(r"    \S", wrong)
    assert re.match(r"    \S", right)


def test_codes_are_named_once() -> None:
    """No two rules, of whatever sort, share a code."""
    codes = [*STRUCTURAL, *(rule.name for rule in CONTENT), *(rule.name for rule in GRAPH)]
    assert len(codes) == len(set(codes))


def test_the_page_and_explain_are_one_text() -> None:
    """The document has a heading for each code, in order, with the words that `explain` gives under it."""
    page = explanations()
    codes = re.findall(r"^### (\S+)$", page, re.MULTILINE)
    assert codes == [*STRUCTURAL, *(rule.name for rule in CONTENT), *(rule.name for rule in GRAPH)]
    for code in codes:
        assert f"### {explain(code)}" in page
    assert page.startswith("# Problems\n")
    assert page.endswith("\n")


def test_an_unknown_code_is_answered_with_the_nearest() -> None:
    """What was likely meant comes first; where nothing is near, nothing is offered."""
    with pytest.raises(BadInput, match="'no-mis'") as wrong:
        explain("no-mis")
    assert wrong.value.nearest[0] == "no-miss"
    with pytest.raises(BadInput) as wrong:
        explain("xyzzy-0000")
    assert wrong.value.nearest == ()
