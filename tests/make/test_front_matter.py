"""Front matter read: what YAML would bend is refused, and every part has its line."""

from pathlib import Path

import pytest
import yaml
from broken_cases import cases, laid_over
from one_entry import DRILL, parsed, small, told

from kb.make import front_matter
from kb.make.library import load
from kb.terms import Drill, Fault


def test_every_part_has_its_line() -> None:
    """Fields, items of lists, fields within them and headings are each known by their line in the file."""
    source = parsed(DRILL).source
    lines = DRILL.split("\n")
    for path, line in source.lines.items():
        name = path.rpartition(".")[2]
        if path and not name.isdigit():
            assert name in lines[line - 1], path
    assert lines[source.line("faults.1") - 1] == "  - bar-drifts-forward"
    assert source.line("faults.0.cause") == source.line("faults.0")
    assert lines[source.line("## Say") - 1] == "## Say"
    assert source.line("prerequisites.1.1.nothing.there") == source.line("prerequisites")
    assert source.line("") == source.line("nothing") == 1


def test_byte_order_mark_and_line_ends_dont_matter() -> None:
    """A file from any system parses to the same, lines included."""
    plain = parsed(DRILL)
    for text in ("\ufeff" + DRILL, DRILL.replace("\n", "\r\n"), DRILL.replace("\n", "\r")):
        assert parsed(text) == plain


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("no", "false"),
        ("Yes", "true"),
        ("on", "true"),
        ("012", "the number 10"),
        ("1:30", "the number 90"),
        ("0x1F", "the number 31"),
        ("1_000", "the number 1000"),
        ("+5", "the number 5"),
        ("1:30.5", "the number 90.5"),
        (".inf", "the number inf"),
        ("12345678901", "the number 12345678901"),
        ("9" * 30, "a number"),
        ("2026-11-25", "a date"),
        ("<<", "a mark of its own"),
        ("=", "a mark of its own"),
    ],
)
def test_surprises_of_yaml_are_refused(written: str, read: str) -> None:
    """What YAML would turn into something else is said as it would be read; quoted it is text."""
    ((line, code, message, hint),) = told(DRILL.replace("name: Extra drill", f"name: {written}"))
    assert (line, code, message) == (2, "yaml-surprise", f"`name`: YAML reads `{written}` as {read}.")
    assert f'"{written}"' in hint
    assert told(DRILL.replace("name: Extra drill", f'name: "{written}"')) == []


def test_surprises_in_lists_are_told_at_their_item() -> None:
    """In a list it is the item that is named, and nothing more is said of it."""
    ((line, _, message, _),) = told(DRILL.replace("cautions: [back]", "cautions:\n  - back\n  - no"))
    assert (line, message) == (26, "An item of `cautions`: YAML reads `no` as false.")


@pytest.mark.parametrize(("word", "meant"), [("no", False), ("yes", True), ("false", False), ("True", True)])
def test_bridge_alone_is_yes_or_no(word: str, meant: bool) -> None:
    """`bridge` takes any way that YAML says yes and no; a bridge elsewhere doesn't."""
    drill = parsed(DRILL.replace("bridge: no", f"bridge: {word}")).record
    assert isinstance(drill, Drill)
    assert drill.bridge is meant
    ((_, code, *_),) = told(DRILL.replace("reps: 4", "reps: no"))
    assert code == "yaml-surprise"


def test_fields_called_yes_and_no_are_names() -> None:
    """A tell's lists are called yes and no, which YAML would read as true and false."""
    fault = parsed(small("faults/hips-rise-first.md"), "fault").record
    assert isinstance(fault, Fault)
    assert fault.tells[0].yes == ("weak-legs-off-floor", "rushed-off-floor")


def test_the_first_of_two_values_counts() -> None:
    """A field given twice is told once, at the second; neither what it says nor its lines replace the first."""
    text = DRILL.replace("bridge: no\n", "bridge: no\ndose: {rounds: nine, sets: [1, {a: 2}]}\n")
    assert [(line, code) for line, code, *_ in told(text)] == [(26, "duplicate-key")]
    assert parsed(text).source.line("dose.rounds") == 19


def test_without_the_fast_loader(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """PyYAML in plain Python finds the same problems at the same lines, syntax errors' lines aside."""
    monkeypatch.setattr(front_matter, "_Loader", yaml.SafeLoader)
    for case, rows in cases().items():
        if rows[0].code in ("duplicate-key", "yaml-alias", "yaml-tag", "too-deep", "yaml-surprise", "empty-value"):
            found = load(laid_over(case, tmp_path / case)).problems
            assert [(p.file, p.line, p.code) for p in found] == [(r.entry, r.line, r.code) for r in rows]
        elif rows[0].code == "bad-yaml":
            assert {p.code for p in load(laid_over(case, tmp_path / case)).problems} == {"bad-yaml"}


@pytest.mark.parametrize(
    ("written", "code"),
    [('"\\UFFFFFFFF"', "bad-yaml"), ('"\\ud800"', "bad-character"), ("@x", "bad-yaml"), ("*x", "yaml-alias")],
)
def test_what_the_slow_loader_lets_through_is_refused(written: str, code: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Escapes that its C twin refuses are told, not raised."""
    monkeypatch.setattr(front_matter, "_Loader", yaml.SafeLoader)
    assert [found for _, found, *_ in told(DRILL.replace("name: Extra drill", f"name: {written}"))] == [code]
