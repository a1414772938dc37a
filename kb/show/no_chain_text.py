"""Where there is no chain, on a terminal: what can be rehearsed, and the smallest thing that would open one."""

from collections.abc import Iterator

from kb.ask.rehearse import SESSION_MINUTES, Rehearsal
from kb.ask.shelf import Shelf
from kb.show.care import asks_first
from kb.show.chain_text import closing, entry_told
from kb.show.coach_words import either, listed
from kb.show.setting import Setting, wrapped
from kb.terms import Drill

__all__ = ["further", "no_chain_text", "session_said"]


def session_said(shelf: Shelf, rehearsal: Rehearsal, kit: str | None) -> str | None:
    """The command that makes a session of what can be rehearsed; None where there is no such session."""
    if not rehearsal.session:
        return None
    room = f"--kit {kit}" if kit else f"--have {','.join(sorted(rehearsal.have))}"
    drills = ",".join(rehearsal.session)
    return f"drillpath session --drills {drills} --lift {shelf.lift.id} {room} --minutes {SESSION_MINUTES}"


def no_chain_text(shelf: Shelf, rehearsal: Rehearsal | None, kit: str | None, setting: Setting) -> list[str]:
    """What can be rehearsed where there is no chain, and the smallest thing that would open one."""
    if rehearsal is None or not (rehearsal.drills or rehearsal.would_open):
        return []
    lines: list[str] = []
    if rehearsal.drills:
        said = "What can be rehearsed, in this order, though nothing here shows whether the fault is gone:"
        lines += [*wrapped(said, setting.width), *_rehearsed(shelf, rehearsal, kit, setting)]
    openers = [
        shelf.drills[opener.prerequisite].name
        if opener.prerequisite is not None
        else listed([shelf.items[item].name.lower() for item in opener.items])
        for opener in rehearsal.would_open
    ]
    if openers:
        lines += [""] if lines else []
        first = (
            "To hold this first would open a chain" if rehearsal.would_open[0].prerequisite else "A chain needs only"
        )
        with_kit = f" with the {kit} kit" if kit else ""
        lines += wrapped(f"{first}{with_kit}: {either(openers)}.", setting.width)
    return [*lines, *closing(setting, ask_first=asks_first(entry.drill for entry in rehearsal.entries))]


def _rehearsed(shelf: Shelf, rehearsal: Rehearsal, kit: str | None, setting: Setting) -> Iterator[str]:
    """The first drills in full, the others by name, and how to make a session of the first."""
    seen: set[str] = set()
    for n, entry in enumerate(rehearsal.entries, 1):
        yield from entry_told(n, entry, shelf, rehearsal.have, seen, setting)
    more = further(rehearsal)
    if more:
        yield ""
        yield from wrapped(
            f"{len(more)} more, in their order: {listed([drill.name for drill in more])}.", setting.width
        )
    command = session_said(shelf, rehearsal, kit)
    if command:
        # on one line, however long, so that it can be pasted
        yield from ("", f"As a session of {SESSION_MINUTES} minutes that ends in the lift:", f"  {command}")


def further(rehearsal: Rehearsal) -> tuple[Drill, ...]:
    """The drills of a rehearsal that are not told in full."""
    full = {entry.drill.id for entry in rehearsal.entries}
    return tuple(drill for drill in rehearsal.drills if drill.id not in full)
