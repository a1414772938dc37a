"""`drillpath diff`: on the small library and a copy of it that was changed, as text and as JSON."""

import json
import shutil
from pathlib import Path

import pytest
from broken_cases import SMALL
from building import rename
from click.testing import CliRunner

from kb.commands.group import drillpath


@pytest.fixture(scope="module")
def libraries(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """The small library, and one in which a drill is renamed, one gone, one added, and a dose and words differ."""
    folder = tmp_path_factory.mktemp("diff")
    for name in ("as-it-was", "as-it-is"):
        shutil.copytree(SMALL / "drills", folder / name / "drills")
    now = folder / "as-it-is"
    rename(now, "Clean from tall")
    (now / "drills" / "clean" / "clean-miss-practice.md").unlink()
    pull = now / "drills" / "pull" / "floor-pull.md"
    pull.write_text(pull.read_text("utf-8").replace("## Why\n", "## Why\nTruly. ", 1), "utf-8")
    hang = now / "drills" / "clean" / "high-hang-clean.md"
    lines = [
        "dose: {rounds: 3, reps: 3, rest_s: 45}" if line.startswith("dose:") else line
        for line in hang.read_text("utf-8").splitlines()
    ]
    hang.write_text("\n".join(lines) + "\n", "utf-8")
    return folder / "as-it-was", now


def _run(*arguments: object) -> tuple[int, str]:
    done = CliRunner().invoke(drillpath, ["diff", *map(str, arguments)])
    return done.exit_code, done.output


def test_as_text(libraries: tuple[Path, Path]) -> None:
    """How much differs first; then entries, what they say of one another, and the chains; no line is too long."""
    status, said = _run(*libraries)
    assert status == 0
    assert "1 removed" in said
    assert "removed  drill      clean-miss-practice" in said
    assert "name: Tall clean -> Clean from tall" in said
    assert "only text, Why: floor-pull" in said
    assert "- clean-miss-practice" in said
    assert "Chains (" in said
    assert "the same drills: cost" in said
    assert max(map(len, said.replace(str(libraries[0].parent), "").splitlines())) <= 80


def test_as_json(libraries: tuple[Path, Path]) -> None:
    """The same in the shape of answers.md."""
    status, said = _run(*libraries, "--json")
    answer = json.loads(said)
    assert (status, answer["version"]) == (0, 1)
    assert (answer["before"], answer["after"]) == tuple(map(str, libraries))
    assert answer["entries"]["removed"] == [{"kind": "drill", "id": "clean-miss-practice"}]
    changed = {each["id"]: each for each in answer["entries"]["changed"]}
    assert changed["tall-clean"]["fields"] == [{"field": "name", "from": "Tall clean", "to": "Clean from tall"}]
    assert changed["floor-pull"] == {
        "kind": "drill",
        "id": "floor-pull",
        "was": "floor-pull",
        "fields": [],
        "sections": ["Why"],
    }
    assert [field["field"] for field in changed["high-hang-clean"]["fields"]] == ["dose"]
    assert all(
        edge["from"] == "clean-miss-practice" or "clean-miss-practice" in edge["to"]
        for edge in answer["edges"]["removed"]
    )
    assert answer["asked"]["chains"] > answer["asked"]["paths"] > 0
    for change in answer["chains"]:
        assert change["kits"]
        ids = [{each["id"] for each in change[side]["drills"]} for side in ("before", "after")]
        assert set(change["added"]) == (ids[1] - ids[0] if ids[0] else set())
        # a chain that came or went altogether has drills on one side alone, and says why on the other
        assert set(change["dropped"]) == (ids[0] - ids[1] if ids[1] else set())


def test_nothing_differs_from_itself(libraries: tuple[Path, Path]) -> None:
    """Said in a sentence; without B it is the library in use."""
    before = libraries[0]
    assert "nothing differs." in " ".join(_run(before, before)[1].split())
    done = CliRunner().invoke(drillpath, ["--library", str(before), "diff", str(before)])
    assert done.exit_code == 0
    assert "the library in use: nothing differs." in " ".join(done.output.split())


def test_what_cant_be_found_is_one_sentence(libraries: tuple[Path, Path], tmp_path: Path) -> None:
    """Exit 2, and no traceback."""
    for wrong in (tmp_path, tmp_path / "no-such", "--"):
        done = CliRunner().invoke(drillpath, ["--library", str(libraries[0]), "diff", "--", str(wrong)])
        assert done.exit_code == 2
        assert len(done.output.strip().splitlines()) == 1


def test_a_broken_library_is_compared_unasked(libraries: tuple[Path, Path], tmp_path: Path) -> None:
    """Entries all the same; that chains weren't compared is said."""
    shutil.copytree(libraries[0], tmp_path / "broken")
    full = tmp_path / "broken" / "drills" / "clean" / "tall-clean.md"
    full.unlink()
    status, said = _run(libraries[0], tmp_path / "broken")
    assert status == 0
    assert "were not compared" in said
    assert "removed  drill      tall-clean" in said
    assert json.loads(_run(libraries[0], tmp_path / "broken", "--json")[1])["asked"] is None
