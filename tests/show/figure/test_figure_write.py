"""Figures as files: all of them, drawn again only when what they show changed."""

import json
from pathlib import Path

import pytest
from building import small_library
from svg_reading import read

from kb.make.library import Library
from kb.produce import produce
from kb.show.figure import write
from kb.show.figure.write import DRAWN, Drawable, figure_texts, write_figures
from kb.terms import DrillId, FaultId, PositionId


@pytest.fixture(scope="module")
def of(library: Library) -> Drawable:
    """What of the shipped library is drawn."""
    return Drawable(library.positions, library.faults, library.drills, library.lifts)


@pytest.fixture
def some(of: Drawable) -> Drawable:
    """A few of each kind."""
    return Drawable(
        {each: of.positions[each] for each in map(PositionId, ("clean-start", "clean-lift-off", "clean-knee"))},
        {each: of.faults[each] for each in (FaultId("back-rounds-off-floor"), FaultId("grip-opens"))},
        {each: of.drills[each] for each in (DrillId("clean-pause-knee"), DrillId("wrist-rock"))},
        of.lifts,
    )


def test_every_figure_of_the_library(of: Drawable, tmp_path: Path) -> None:
    """A file for each position, each fault with a posture, each drill with a reach; all sound; unchanged, none."""
    changed = write_figures(of, tmp_path)
    assert {path.stem for path in changed} >= set(of.positions)
    faults = {fault.id for fault in of.faults.values() if fault.posture}
    drills = {drill.id for drill in of.drills.values() if drill.reach}
    names = {path.name.removesuffix(".svg") for path in tmp_path.glob("*.svg")}
    moving = {name.removesuffix(".moving") for name in names if "." in name}
    assert {name for name in names if "." not in name} == {*of.positions, *faults, *drills}
    assert moving < drills
    for path in changed:
        read(path.read_text(encoding="utf-8"))
    assert figure_texts(of) == {path.name: path.read_text(encoding="utf-8") for path in changed}
    assert write_figures(of, tmp_path) == []


def test_only_what_changed_is_drawn(some: Drawable, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A position turned redraws itself and what shows it; text redraws nothing."""
    assert {path.name for path in write_figures(some, tmp_path)} == {
        *("clean-start.svg", "clean-lift-off.svg", "clean-knee.svg", "back-rounds-off-floor.svg"),
        *("clean-pause-knee.svg", "clean-pause-knee.moving.svg"),
    }
    first = PositionId("clean-lift-off")
    said = some.positions[first]._replace(sections={"Feel": "Otherwise."})
    monkeypatch.setattr(write, "alone", lambda svg: pytest.fail(f"drawn: {svg}"))
    assert write_figures(some._replace(positions={**some.positions, first: said}), tmp_path) == []
    monkeypatch.undo()
    turned = said._replace(angles={**said.angles, "shoulder": 40.0})
    changed = write_figures(some._replace(positions={**some.positions, first: turned}), tmp_path)
    assert {path.name for path in changed} == {"clean-lift-off.svg", "back-rounds-off-floor.svg"}


def test_what_was_changed_or_lost_is_drawn_again(some: Drawable, tmp_path: Path) -> None:
    """A file edited by hand or deleted comes back; one of a thing that is no more goes."""
    write_figures(some, tmp_path)
    one, other = tmp_path / "clean-start.svg", tmp_path / "clean-knee.svg"
    text = one.read_text()
    one.write_text("<svg/>")
    other.unlink()
    assert write_figures(some, tmp_path) == [one, other]
    assert one.read_text() == text
    mine = tmp_path / "mine.svg"
    mine.write_text("<svg/>")
    gone = write_figures(some._replace(faults={}), tmp_path)
    assert gone == [tmp_path / "back-rounds-off-floor.svg"]
    assert not gone[0].exists()
    assert mine.exists()
    other.unlink()
    assert write_figures(some._replace(faults={}, positions={}, drills={}), tmp_path) != []
    assert [path.name for path in tmp_path.glob("*.svg")] == ["mine.svg"]


BROKEN = ["", "[]", "{", '{"clean-start.svg": 3}', '{"../../up.svg": ["a", "b"], "x.md": ["a", "b"]}']


@pytest.mark.parametrize("kept", BROKEN)
def test_a_broken_note_is_no_matter(some: Drawable, tmp_path: Path, kept: str) -> None:
    """Whatever stands in the note of what was drawn, all is drawn, and nothing outside is touched."""
    folder = tmp_path / "a" / "b"
    folder.mkdir(parents=True)
    (folder / DRAWN).write_text(kept)
    (tmp_path / "up.svg").write_text("<svg/>")
    assert len(write_figures(some, folder)) == 6
    assert (tmp_path / "up.svg").exists()
    assert "clean-start.svg" in json.loads((folder / DRAWN).read_text())


def test_a_program_changed_draws_all(some: Drawable, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What another version drew is drawn again."""
    write_figures(some, tmp_path)
    kept = (tmp_path / DRAWN).read_text()
    monkeypatch.setattr(write, "_program", lambda: "another")
    assert write_figures(some, tmp_path) == []  # the same comes out: nothing to write
    assert (tmp_path / DRAWN).read_text() != kept


def test_the_build_draws(tmp_path: Path) -> None:
    """Figures stand in out/figures after a build, of what its own library says."""
    root = small_library(tmp_path)
    produce(root, root / "out")
    assert (root / "out" / "figures" / "jerk-split.svg").is_file()
    assert (root / "out" / "figures" / "full-clean.moving.svg").is_file()
