"""`--file FILE`: a lifter's measurements, one `name: centimetres` a line, as `drillpath screen --save` writes them.

The file is YAML: a map of names of `kb.body.tape.MEASURES` to numbers, and nothing else.
"""

from collections.abc import Mapping
from difflib import get_close_matches
from pathlib import Path

from kb.body.tape import MEASURES, Tape, tape_of
from kb.errors import BadInput
from kb.make.front_matter import take_apart

__all__ = ["LARGEST", "screen_file", "screen_text"]

LARGEST = 100_000
"""Bytes of a file at most: ten numbers and a few remarks."""


def _data(path: Path) -> bytes:
    try:
        if path.is_file() and path.stat().st_size > LARGEST:
            raise BadInput(f"{path} is too large for a lifter's measurements ({LARGEST // 1000} kB at most)")
        return path.read_bytes()
    except OSError as error:
        raise BadInput(f"{path} can't be read: {(error.strerror or str(error)).lower()}") from None


def screen_file(path: Path) -> Mapping[str, float]:
    """The measurements in a file, cm, by name.

    Raises BadInput for a file that can't be read, a name that is unknown and a value that is no number or can't be,
    naming file, line and field.
    """
    # between two lines of dashes, so that what reads entries reads this; its lines are counted from those
    read = take_apart(str(path), b"---\n" + _data(path).removeprefix(b"\xef\xbb\xbf").rstrip() + b"\n---\n")
    if read.problems:
        first = read.problems[0]
        said = first.message.replace("The front matter", "The file").replace("in an entry", "here").rstrip(".")
        raise BadInput(f"{path}, line {max(first.line - 1, 1)}: {said[:1].lower()}{said[1:]}")
    found: dict[str, float] = {}
    for name, value in (read.value or {}).items():
        where = f"{path}, line {read.lines.get(name, 2) - 1}, {name}"
        if name not in MEASURES:
            near = tuple(get_close_matches(name, MEASURES, n=1)) or tuple(MEASURES)
            raise BadInput(f"{where}: there is no such measurement", nearest=near)
        if not isinstance(value, int | float):
            raise BadInput(f"{where}: it must be a number of centimetres")
        try:
            tape_of({"stature": 175.0, name: float(value)})
        except BadInput as error:
            raise BadInput(f"{where}: {error}") from None
        found[name] = float(value)
    return found


def screen_text(tape: Tape) -> str:
    """The file that holds these measurements."""
    lines = ["# measurements in cm, for `drillpath screen --file`"]
    for name, measure in MEASURES.items():
        value = getattr(tape, name)
        lines.append(f"# {name}: {measure.says}" if value is None else f"{name}: {value:g} # {measure.says}")
    return "\n".join(lines) + "\n"
