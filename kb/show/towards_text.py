"""The path as far as a kit goes, on a terminal: how much of each drill, in order, and when to move on."""

from collections.abc import Collection, Sequence

from kb.ask.shelf import Shelf
from kb.ask.towards import Toward
from kb.dose import minutes
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL, Due, cares
from kb.show.coach_words import CAUTIONS, LOADS, dosed, human, moved_on
from kb.show.entry_lines import INDENT, LABEL, gear_said
from kb.show.setting import Setting, aside, hanging, labelled, wrapped
from kb.terms import ItemId, Load, Stage

__all__ = ["towards_text"]


def towards_text(
    shelf: Shelf, found: Sequence[Toward], have: Collection[ItemId], kit: str | None, setting: Setting
) -> list[str]:
    """What can be done towards a lift that a kit doesn't lead to, in lines; none where nothing can."""
    if not found:
        return []
    with_kit, lift = f"the {kit} kit" if kit else "your gear", shelf.lift.name.lower()
    count = f"{len(found)} drill{'s' if len(found) > 1 else ''}"
    facts = [with_kit, count, f"{minutes(sum(each.seconds for each in found))} min in all"]
    lines = aside(f"Towards the {lift}, as far as it goes", setting.between.join(facts), setting)
    seen: set[str] = set()
    for number, each in enumerate(found, 1):
        lines += ["", *_drill(number, each, shelf, have, seen, setting)]
    spread = f"Here {with_kit} ends; the {lift} itself comes when what is missing is there."
    spread += " Spread it over sessions, two new drills in each at most; what was new comes back as a check."
    return [
        *lines,
        "",
        *(line for text in (spread, USUAL, ASK_FIRST, NO_REVIEW) for line in wrapped(text, setting.width)),
    ]


def _drill(
    number: int, each: Toward, shelf: Shelf, have: Collection[ItemId], seen: set[str], setting: Setting
) -> list[str]:
    drill = each.drill
    bare = drill.stage is Stage.PREPARE or each.load is Load.NONE
    said = [
        ("Do", ", ".join([dosed(drill, setting), *([] if bare else [LOADS[each.load]])])),
        ("Say", f'"{drill.cues[0]}"' if drill.cues else ""),
        ("Move on", f"when {moved_on(drill.standard)}"),
        ("Gear", gear_said(each.gear, have, shelf.items)),
        ("Mind", ", ".join(CAUTIONS.get(caution, human(caution)) for caution in drill.cautions)),
        ("Not for", drill.not_for or ""),
    ]
    due = cares(Due(drill, each.load, drill.catch, each.gear), seen)
    lines = [line for text in due for line in hanging("! ", text, setting)]
    lines += aside(f"{number:>2}  {drill.name}", f"{minutes(each.seconds)} min", setting)
    lines += labelled(said, setting, indent=INDENT, hang=LABEL)
    return lines
