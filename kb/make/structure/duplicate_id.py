"""Two entries have the same id, whatever their kinds and folders.

Why it matters: an id is how entries name one another, how a page is addressed and what a lifter's record
holds. If two share one, nothing can tell which is meant; the second is left out until one is renamed.

Wrong:

    drills/positions/jerk-drive.md
    drills/jerk/jerk-drive.md

Right:

    drills/positions/jerk-drive.md
    drills/jerk/jerk-drive-and-stop.md
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library

__all__ = ["CODE", "rule"]

CODE = "duplicate-id"


def rule(library: Library) -> Iterator[Problem]:
    """Every entry file whose id an earlier file has."""
    first: dict[str, str] = {}
    for file in library.files:
        id_ = file.rpartition("/")[2].removesuffix(".md")
        if id_ in first:
            message = f"The id `{id_}` is taken by {first[id_]}."
            yield Problem(file=file, line=1, code=CODE, message=message, help="Rename one of the two files.")
        first.setdefault(id_, file)
