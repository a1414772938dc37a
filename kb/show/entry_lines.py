"""One drill of a chain as lines: how much, what changed, what to say, when to move on, with what, what to mind."""

from collections.abc import Collection, Mapping

from kb.ask.route import Entry
from kb.dose import minutes, sets
from kb.kit import Gear
from kb.show.care import Due, cares
from kb.show.coach_words import CAUTIONS, changed, dosed, human, in_hands, listed, moved_on, seen
from kb.show.heavy import Heavy, shares
from kb.show.setting import Setting, aside, hanging, labelled
from kb.terms import Item, ItemId, Lift

__all__ = ["INDENT", "LABEL", "entry_lines", "gear_said"]

INDENT, LABEL = 4, 9
"""Columns before a drill's lines, and of the word that each begins with."""


def gear_said(gear: Collection[Gear], have: Collection[ItemId], items: Mapping[ItemId, Item]) -> str:
    """What to fetch: each thing once, with what it stands in for where that isn't there."""
    fetched: dict[ItemId, list[str]] = {}
    for each in gear:
        missing = fetched.setdefault(each.using, [])
        if each.using != each.item and each.item not in have:
            missing.append(items[each.item].name.lower())
    return ", ".join(
        items[using].name.lower() + (f" for {listed(missing)}" if missing else "") for using, missing in fetched.items()
    )


def _lost(gear: Collection[Gear], have: Collection[ItemId]) -> list[str]:
    return list(dict.fromkeys(each.lost for each in gear if each.lost and each.item not in have))


def entry_lines(
    number: int,
    entry: Entry,
    lift: Lift,
    *,
    have: Collection[ItemId],
    items: Mapping[ItemId, Item],
    seen: set[str],
    setting: Setting,
    heavy: Heavy = shares,
) -> list[str]:
    """A drill of a chain, its cautions at their place; `seen` holds what the answer has said already.

    `number` 0 is none: it has no place in an order. `heavy` says how heavy a drill is.
    """
    drill = entry.drill
    due = cares(Due(drill, entry.load, entry.dials.catch, entry.gear), seen)
    said = [
        ("Do", ", ".join(part for part in (dosed(drill, setting, work=entry.work), *_load(entry, heavy)) if part)),
        ("Changed", listed([changed(change, lift, drill) for change in entry.changes])),
        ("Say", f'"{drill.cues[0]}"' if drill.cues else ""),
        ("Move on", _move_on(entry, setting)),
        ("Gear", gear_said(entry.gear, have, items)),
        ("Lost", "; ".join(_first(_lost(entry.gear, have), seen))),
        ("Mind", ", ".join(CAUTIONS.get(caution, human(caution)) for caution in drill.cautions)),
        ("Not for", drill.not_for or ""),
    ]
    head = setting.between.join(["work" if entry.work else "check", f"{minutes(entry.seconds)} min"])
    lines = [line for text in due for line in hanging("! ", text, setting)]
    lines += [""] if lines else []
    lines += aside(f"{number or '-':>2}  {drill.name}", head, setting)
    lines += labelled(said, setting, indent=INDENT, hang=LABEL)
    return lines


def _load(entry: Entry, heavy: Heavy) -> tuple[str, str]:
    """What is in the hands, and how heavy it gets."""
    said = in_hands(entry.drill, entry.load, entry.gear, work=entry.work)
    return said, heavy(entry) if said else ""


def _move_on(entry: Entry, setting: Setting) -> str:
    """The standard; of a check what its one round must show, and what to do if it doesn't."""
    standard, reps = entry.drill.standard, sets(entry.drill.dose)[0] * entry.drill.dose.sides
    if entry.work:
        return f"when {moved_on(standard, entry.gone)}"
    shown = f"{standard.count} of {standard.of}" if standard.of <= reps else f"all {reps}" if reps > 1 else "it"
    verb = "shows" if shown == "it" else "show"
    return f"when {shown} {verb} this: {seen(standard, entry.gone)}; else work on it, {dosed(entry.drill, setting)}"


def _first(texts: list[str], seen: set[str]) -> list[str]:
    """Those that this answer hasn't said yet."""
    fresh = [text for text in texts if text not in seen]
    seen.update(fresh)
    return fresh
