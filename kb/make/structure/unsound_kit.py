"""A kit with a bar has no stick, or a kit is called `full`.

Why it matters: first attempts are made with a stick, and a bar doesn't stand in for one: the room that has
a bar and no stick can't teach a beginner. `full` is the name of everything there is.

Wrong:

    # equipment/bar.md
    kits: [hall, garage]
    # equipment/stick.md
    kits: [hall]

Right:

    # equipment/stick.md
    kits: [hall, garage]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at, known
from kb.terms import ItemId

__all__ = ["CODE", "rule"]

CODE = "unsound-kit"

_BAR, _STICK = ItemId("bar"), ItemId("stick")


def rule(library: Library) -> Iterator[Problem]:
    """Every kit that has a bar and no stick, and every mention of `full`."""
    for item in library.items.values():
        for n, kit in enumerate(item.kits):
            if kit == "full":
                message = "`full` is every item there is, and isn't said."
                yield at(library, item.id, f"kits.{n}", CODE, message, "Leave it out.")
    bar, stick = library.items.get(_BAR), library.items.get(_STICK)
    if bar is None or (stick is None and _STICK in known(library, "equipment")):
        return
    for n, kit in enumerate(bar.kits):
        if kit != "full" and (stick is None or kit not in stick.kits):
            message = f"The kit `{kit}` has a bar and no stick."
            yield at(library, bar.id, f"kits.{n}", CODE, message, f"Add `{kit}` to the kits of `stick`.")
