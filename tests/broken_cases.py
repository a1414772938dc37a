"""The cases of tests/broken: what each is laid over, and what must be found (see the head of cases.tsv)."""

import shutil
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import NamedTuple

from kb.make.library import Library, load

__all__ = ["BROKEN", "SMALL", "Expected", "cases", "laid_over", "sound"]

HERE = Path(__file__).parent
BROKEN = HERE / "broken"
SMALL = HERE / "data" / "small"


class Expected(NamedTuple):
    """One row of cases.tsv."""

    case: str
    entry: str
    line: int
    code: str
    what: str


def rows() -> Iterator[Expected]:
    """Every row, in order."""
    for line in (BROKEN / "cases.tsv").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            case, entry, number, code, what = line.split("\t")
            yield Expected(case, entry, int(number), code, what)


def cases() -> dict[str, list[Expected]]:
    """The rows of each case."""
    found: dict[str, list[Expected]] = {}
    for row in rows():
        found.setdefault(row.case, []).append(row)
    return found


def laid_over(case: str, folder: Path) -> Path:
    """A library made in `folder`: the small one with the case laid over it."""
    root = folder / "library"
    shutil.copytree(SMALL, root)
    overlay = BROKEN / case
    if not overlay.is_dir():
        put = root / cases()[case][0].entry
        put.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(BROKEN / f"{case}.md", put)
        return root
    shutil.copytree(overlay, root, dirs_exist_ok=True)
    for gone in list(root.rglob("*.gone")):
        gone.with_suffix("").unlink()
        gone.unlink()
    return root


@cache
def sound() -> Library:
    """The small library as loaded."""
    return load(SMALL)
