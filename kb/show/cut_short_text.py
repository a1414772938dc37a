"""What the minutes hold where they are too few for a chain, on a terminal."""

from kb import dose
from kb.ask.chain import Chain
from kb.ask.route import Entry
from kb.show.chain_text import closing
from kb.show.coach_words import human, throughout_said
from kb.show.entry_lines import entry_lines
from kb.show.heavy import Heavy
from kb.show.setting import Setting, wrapped
from kb.terms import Load

__all__ = ["cut_short_text"]


def cut_short_text(found: Chain, entry: Entry, minutes: int, setting: Setting, heavy: Heavy) -> list[str]:
    """The first work of a chain alone, why, and what of the chain is for another day; its drill must have its text."""
    matter = found.matter
    others = [each.drill.name for each in found.routes[0].entries if each.drill.id != entry.drill.id]
    said = f"In {minutes} min, for who is warm: this alone, {dose.minutes(entry.seconds)} min, against"
    said += f" {human(matter.cause.id)} ({human(matter.cause.kind)}). {matter.cause.text}"
    lines = [*wrapped(said, setting.width), *wrapped(throughout_said(matter.cause, matter.worked_cause), setting.width)]
    have, items = matter.question.have, matter.shelf.items
    lines += [
        "",
        *entry_lines(1, entry, matter.shelf.lift, have=have, items=items, seen=set(), setting=setting, heavy=heavy),
    ]
    if others:
        rest = f"On another day from there, with `drillpath chain` and no minutes: {'; '.join(others)}."
        lines += ["", *wrapped(rest, setting.width)]
    return [*lines, *closing(setting, ask_first=matter.load is Load.WORKING)]
