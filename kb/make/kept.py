"""What unchanged entries parsed to, kept in one file so that they needn't be parsed again.

The file may be deleted at any time. Damaged, or written by another version of the parser, it is passed
over; written aside and renamed, it is never half there.
"""

import hashlib
import json
import sys
from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

from kb.errors import Problem
from kb.make.aside import aside
from kb.make.files import Kind
from kb.make.library import Parsed, Record, Source
from kb.plain import drill_from, fault_from, item_from, lift_from, position_from, to_plain

__all__ = ["Kept", "parsed_from", "plain_of", "read", "write"]

Kept = Mapping[str, Any]
"""By file: the digest of its bytes, the record as plain values (None without one), lines and problems."""

_PARSER = (
    "aside body_text entries fields files front_matter kept limits models posture_models records sentences library"
    " ../plain ../terms"
).split()
_FROM: dict[Kind, Callable[[Any], Record]] = {
    "lift": lift_from,
    "position": position_from,
    "fault": fault_from,
    "equipment": item_from,
    "drill": drill_from,
}


def _version() -> str:
    """A name for this parser, made from its own source, so that no one need remember to change a number."""
    digest = hashlib.sha256(sys.version.encode())
    here = Path(__file__).parent
    for name in _PARSER:
        digest.update((here / f"{name}.py").read_bytes())
    return digest.hexdigest()


def read(path: Path) -> Kept:
    """What is kept in `path`; nothing if it isn't there, is damaged, or is another parser's."""
    with suppress(OSError, ValueError):
        check, _, payload = path.read_bytes().partition(b"\n")
        if check.decode() == _seal(payload):
            kept: Kept = json.loads(payload)
            return kept
    return {}


def write(path: Path, kept: Kept) -> None:
    """Keep it in `path`. That it can't be written is no failure: the next load parses again."""
    payload = json.dumps(kept, ensure_ascii=True, separators=(",", ":")).encode()
    with suppress(OSError):
        path.parent.mkdir(parents=True, exist_ok=True)
        with aside(path) as beside:
            beside.write_bytes(_seal(payload).encode() + b"\n" + payload)


def _seal(payload: bytes) -> str:
    return hashlib.sha256(_version().encode() + payload).hexdigest()


def plain_of(parsed: Parsed, digest: str) -> list[Any]:
    """One entry's line in what is kept."""
    record = None if parsed.record is None else to_plain(parsed.record)
    return [digest, record, parsed.source.lines, [list(problem) for problem in parsed.problems]]


def parsed_from(kind: Kind, file: str, plain: list[Any]) -> Parsed:
    """What an entry parsed to, from its line in what is kept."""
    _, record, lines, problems = plain
    return Parsed(
        record=None if record is None else _FROM[kind](record),
        source=Source(file=file, lines=lines),
        problems=tuple(Problem(*problem) for problem in problems),
    )
