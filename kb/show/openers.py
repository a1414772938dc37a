"""What else opens the joints of a cause of mobility, a joint each: a chain takes the opener that costs it least."""

from kb.ask.matter import Matter
from kb.ask.route import Route
from kb.dose import work_seconds
from kb.show.coach_words import dosed, human
from kb.show.setting import Setting
from kb.terms import Drill, Stage

__all__ = ["also_opens"]


def also_opens(matter: Matter, route: Route, setting: Setting) -> str:
    """The other joints that this cause may hold, each with the opener that takes least gear; else nothing."""
    if matter.worked_cause.kind != "mobility":
        return ""
    done = {entry.drill.id for entry in route.entries}
    opened = {joint for entry in route.entries if entry.drill.stage is Stage.PREPARE for joint in entry.drill.opens[:1]}
    found: dict[str, Drill] = {}
    able = [matter.shelf.drills[each] for each in matter.doable & matter.addressing]
    for drill in sorted(able, key=lambda drill: (len(drill.equipment), work_seconds(drill), drill.id)):
        if drill.stage is Stage.PREPARE and drill.id not in done and drill.opens and drill.opens[0] not in opened:
            found.setdefault(drill.opens[0], drill)
    if not found:
        return ""
    each = [f"{human(joint)}, {drill.name} ({dosed(drill, setting)})" for joint, drill in sorted(found.items())]
    return f"If another joint stops it, or as well: {'; '.join(each)}. On the terminal `--stiff {next(iter(found))}`."
