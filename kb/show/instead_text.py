"""The other causes of a fault on a terminal: what tells them apart, and what each calls for, in short."""

from collections.abc import Collection, Sequence

from kb import dose
from kb.ask.instead import Instead
from kb.ask.route import Entry
from kb.show.care import Due, cares
from kb.show.coach_words import dosed, human, in_hands, moved_on
from kb.show.heavy import Heavy
from kb.show.setting import Setting, hanging, titled, wrapped
from kb.terms import DrillId, Fault, Load

__all__ = ["BY_TURNS", "by_turns_text", "causes_text", "instead_text", "too_text"]

BY_TURNS = (
    "What it asks for in every drill is kept from today; its drills come by turns with those above, a day each. Where"
    " the checks show both gone, the lift is next; where one stays, its days go on alone."
)
"""How two causes are gone about. Common practice, no source."""

Told = Collection[tuple[DrillId, Load, bool]]
"""The drills an answer has told in full: which, at what load, and whether as work."""


def instead_text(others: Sequence[Instead], told: Sequence[Entry], seen: set[str], setting: Setting) -> list[str]:
    """What to do if it is another cause.

    `told` are the drills told in full above, `seen` the cautions said there; the others' drills must have their text.
    """
    return titled("If it is another cause", causes_text(others, told, seen, setting), setting)


def causes_text(
    others: Sequence[Instead], told: Sequence[Entry], seen: set[str], setting: Setting, heavy: Heavy | None = None
) -> list[str]:
    """What each of some causes calls for, in short; what was `told`, or stands under one before, by name and dose.

    `heavy` says how heavy each drill is, if that is to be told.
    """
    known = {(entry.drill.id, entry.load, entry.work) for entry in told}
    lines: list[str] = []
    for other in others:
        lines += _other(other, known, seen, setting, heavy)
        entries = (*other.chain.routes[0].entries, *other.chain.strengthen) if other.chain else ()
        known |= {(entry.drill.id, entry.load, entry.work) for entry in entries}
    return lines


def by_turns_text(others: Sequence[Instead], told: Sequence[Entry], seen: set[str], setting: Setting) -> list[str]:
    """What the causes that were found too call for, in short, and how two are gone about at once."""
    known = {(entry.drill.id, entry.load, entry.work) for entry in told}
    lines = [line for other in others for line in _other(other, known, seen, setting)]
    return (
        titled(
            "The other cause found" if len(others) == 1 else "The other causes found",
            [*lines, *wrapped(BY_TURNS, setting.width)],
            setting,
        )
        if others
        else []
    )


def too_text(fault: Fault, own: Instead, told: Sequence[Entry], seen: set[str], setting: Setting) -> list[str]:
    """The drills for a fault that was seen too, in short; `told` are those told in full above."""
    known = {(entry.drill.id, entry.load, entry.work) for entry in told}
    lines = titled(f"For {fault.name.lower()}, once it is its turn", _other(own, known, seen, setting), setting)
    return [*lines, *hanging("  ", f"Other causes and their checks: drillpath show {fault.id}", setting)]


def _other(other: Instead, known: Told, seen: set[str], setting: Setting, heavy: Heavy | None = None) -> list[str]:
    cause, name = other.cause, human(other.cause.id).capitalize()
    if other.chain is None:
        return hanging("  - ", f"{name} ({human(cause.kind)}): no chain here; {other.none}.", setting)
    matter, route = other.chain.matter, other.chain.routes[0]
    before = f", by {matter.worked.name}" if matter.worked.id != matter.fault.id else ""
    head = f"{name} ({human(cause.kind)}{before}), {dose.minutes(route.seconds)} min. {cause.throughout}".rstrip()
    lines = hanging("  - ", head, setting)
    for n, entry in enumerate(route.entries, 1):
        lines += _drill(f"    {n}  ", entry, known, seen, setting, heavy)
    for entry in other.chain.strengthen:
        lines += _drill("    +  ", entry, known, seen, setting, heavy)
    return lines


def _drill(mark: str, entry: Entry, known: Told, seen: set[str], setting: Setting, heavy: Heavy | None) -> list[str]:
    """A drill, under what is to be minded before it and wasn't said yet."""
    due = cares(Due(entry.drill, entry.load, entry.dials.catch, entry.gear), seen)
    lines = [line for text in due for line in hanging("     ! ", text, setting)]
    return [*lines, *hanging(mark, _said(entry, known, setting, heavy), setting)]


def _said(entry: Entry, known: Told, setting: Setting, heavy: Heavy | None) -> str:
    """A drill in a line or two: what it is, how much, what to say and until when; briefly where it stands above."""
    drill = entry.drill
    if not entry.work:
        return f"{drill.name}: check"
    held = in_hands(drill, entry.load, entry.gear)
    weight = heavy(entry) if heavy and held else ""
    much = ", ".join(part for part in (dosed(drill, setting), held, weight) if part)
    if (drill.id, entry.load, entry.work) in known:
        return f"{drill.name}: {much}, as above"
    cue = f'; "{drill.cues[0]}"' if drill.cues else ""
    not_for = f". Not for: {drill.not_for}" if drill.not_for else ""
    return f"{drill.name}: {much}{cue}; until {moved_on(drill.standard, entry.gone)}{not_for}"
