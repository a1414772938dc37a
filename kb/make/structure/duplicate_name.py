"""Two entries of a kind go by the same name, and serve the same lift.

Names are compared as people type them: case, accents and punctuation don't count. Ids, names and other
names are all compared; faults and drills only within a lift, where what serves a part serves the whole.

Why it matters: a coach asks by a name they know. If two entries answer to it, they get either or neither.

Wrong:

    # drills/snatch/drop-under.md
    also: [snatch balance]
    # drills/snatch/drive-and-drop-under.md
    also: [snatch balance]

Right:

    # drills/snatch/drop-under.md
    also: [snatch balance without a dip]
    # drills/snatch/drive-and-drop-under.md
    also: [snatch balance]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.words import fold

__all__ = ["CODE", "rule"]

CODE = "duplicate-name"


def rule(library: Library) -> Iterator[Problem]:
    """Every name that another entry of the kind and lift has already."""
    taken: dict[tuple[str, str, str], str] = {}
    named = sorted(_named(library), key=lambda name: (name[3].startswith("also"), name[2], name[3]))
    for kind, places, owner, path, name in named:
        folded = fold(name)
        holders = {taken.setdefault((kind, place, folded), owner) for place in places} - {owner}
        if holders:
            message = f"`{name}` is already a name of the {kind} `{min(holders)}`."
            yield at(library, owner, path, CODE, message, "Call one of the two something else.")


def _named(library: Library) -> Iterator[tuple[str, tuple[str, ...], str, str, str]]:
    """Kind, where the name must be its own, entry, path and name."""
    wholes: dict[str, tuple[str, ...]] = {}
    for lift in library.lifts.values():
        for part in lift.serves:
            wholes[part] = (*wholes.get(part, ()), lift.id)
    everywhere = ("",)
    for kind, records in (("lift", library.lifts), ("position", library.positions), ("equipment", library.items)):
        for record in records.values():
            yield from _names(kind, everywhere, record.id, record.name, record.also)
    for kind, served in (("fault", library.faults), ("drill", library.drills)):
        for one in served.values():
            places = tuple(dict.fromkeys(place for lift_id in one.lifts for place in wholes.get(lift_id, ())))
            yield from _names(kind, places, one.id, one.name, one.also)


def _names(
    kind: str, places: tuple[str, ...], owner: str, name: str, also: tuple[str, ...]
) -> Iterator[tuple[str, tuple[str, ...], str, str, str]]:
    if fold(owner) != fold(name):
        yield kind, places, owner, "", owner
    yield kind, places, owner, "name", name
    yield from ((kind, places, owner, f"also.{n}", other) for n, other in enumerate(also))
