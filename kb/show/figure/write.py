"""A library's figures as files: positions, faults with a posture, drills as strips and moving.

`figures/ID.svg` is the figure of a position, a fault's pair or a drill's strip; ids are unique over all kinds.
`figures/ID.moving.svg` is a drill in motion. What each was drawn from is kept beside them, so that only what
changed is drawn again.
"""

import hashlib
import json
from collections.abc import Callable, Iterator, Mapping
from functools import partial
from pathlib import Path
from re import fullmatch
from typing import Any, NamedTuple

from kb.make.aside import put
from kb.plain import to_plain
from kb.show.figure.drawing import figure_svg
from kb.show.figure.look import alone
from kb.show.figure.moving import moving_svg
from kb.show.figure.pair import pair_svg
from kb.show.figure.passing import passed, serving
from kb.show.figure.strip import strip_svg
from kb.terms import Drill, DrillId, Fault, FaultId, Lift, LiftId, Position, PositionId

__all__ = ["DRAWN", "Drawable", "figure_texts", "figures_of", "write_figures"]

DRAWN = "drawn.json"
"""What the figures in a folder were drawn from, and what each is."""


class Drawable(NamedTuple):
    """What of a library is drawn."""

    positions: Mapping[PositionId, Position]
    faults: Mapping[FaultId, Fault]
    drills: Mapping[DrillId, Drill]
    lifts: Mapping[LiftId, Lift]


class Figure(NamedTuple):
    """A file, what it is drawn from, and how."""

    file: str
    of: Any
    draw: Callable[[], str]


def figures_of(of: Drawable) -> Iterator[Figure]:
    """Every figure there is, not yet drawn."""
    for position in of.positions.values():
        yield Figure(f"{position.id}.svg", _bare(position), partial(figure_svg, position))
    for fault in of.faults.values():
        if fault.posture is not None and fault.posture.position in of.positions:
            drawn = (fault.id, fault.name, fault.posture, _bare(of.positions[fault.posture.position]))
            yield Figure(f"{fault.id}.svg", drawn, partial(pair_svg, fault, of.positions))
    for drill in of.drills.values():
        lift = serving(drill, of.lifts)
        postures = passed(drill, lift, of.positions) if lift is not None else ()
        if lift is None or not postures:
            continue
        through = (drill.id, drill.name, [_bare(posture) for posture in postures])
        yield Figure(f"{drill.id}.svg", through, partial(strip_svg, drill, lift, of.positions))
        if len(postures) > 1:
            yield Figure(f"{drill.id}.moving.svg", through, partial(moving_svg, drill, lift, of.positions))


def _bare(position: Position) -> Position:
    """A position without its text, which isn't drawn."""
    return position._replace(sections={})


def figure_texts(of: Drawable) -> dict[str, str]:
    """Every figure's text as a file holds it, by the file's name, in order."""
    return {figure.file: alone(figure.draw()) for figure in figures_of(of)}


def write_figures(of: Drawable, folder: Path) -> list[Path]:
    """Bring the figures in `folder` up to date; the files that were written or removed.

    Raises
    ------
    OSError
        If something can't be written.
    """
    before = _before(folder)
    program = _program()
    now: dict[str, list[str]] = {}
    changed: list[Path] = []
    for figure in figures_of(of):
        path = folder / figure.file
        made_of = hashlib.sha256(f"{program}{json.dumps(to_plain(figure.of), sort_keys=True)}".encode()).hexdigest()
        kept = before.get(figure.file)
        if kept is not None and kept[0] == made_of and _digest(path) == kept[1]:
            now[figure.file] = kept
            continue
        text = alone(figure.draw())
        now[figure.file] = [made_of, hashlib.sha256(text.encode()).hexdigest()]
        if put(path, text):
            changed.append(path)
    for file in sorted(before.keys() - now.keys()):
        if (folder / file).is_file():
            (folder / file).unlink()
            changed.append(folder / file)
    put(folder / DRAWN, json.dumps(now, indent=0, sort_keys=True) + "\n")
    return changed


def _digest(path: Path) -> str | None:
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except OSError:
        return None


def _before(folder: Path) -> dict[str, list[str]]:
    """What was drawn of what, as far as it can be read and is of the form that is written here."""
    try:
        said = json.loads((folder / DRAWN).read_bytes())
    except (OSError, ValueError):
        return {}
    if not isinstance(said, dict):
        return {}
    return {file: kept for file, kept in said.items() if isinstance(kept, list) and len(kept) == 2 and _own(file)}


def _own(file: str) -> bool:
    """Whether a name is one that is written here: never one that leads out of the folder."""
    return fullmatch(r"[a-z0-9-]+(\.moving)?\.svg", file) is not None


def _program() -> str:
    """A name for what draws, from its own source: no number to remember to change."""
    here = Path(__file__).parent
    digest = hashlib.sha256()
    for path in sorted([*here.glob("*.py"), *here.parents[1].glob("body/*.py")]):
        digest.update(path.read_bytes())
    return digest.hexdigest()
