"""What else opens the joints of a cause of mobility, a joint each: a chain takes the opener that costs it least."""

from kb.ask.matter import Matter
from kb.ask.route import Route
from kb.dose import work_seconds
from kb.show.coach_words import dosed, human
from kb.show.setting import Setting
from kb.terms import Drill, Stage

__all__ = ["JOINTS", "SHOES", "also_opens", "meanwhile"]

JOINTS = (
    "Mobility comes slowly: do the opening on most days, for six weeks and more, its rounds twice over once they are"
    " easy. Go past a drill of the chain only on a day when its standard is met without weight; until then do the"
    " lift in the form that is held, for example caught high. Minutes left over are the opener's: all its rounds again."
)
"""What to say first where the cause is mobility: no session mends it."""

SHOES = (
    "Stiff ankles: lifting shoes, whose heel can't slip, let the lift go on meanwhile at any weight, as deep as is held"
    " in them. On loose plates, books or wedges a stick only."
)
"""What goes on meanwhile where the ankles are stiff. Common practice, no source."""


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


def meanwhile(best: Route) -> str:
    """How long opening takes, and what is lifted meanwhile."""
    opened = {joint for entry in best.entries if entry.drill.stage is Stage.PREPARE for joint in entry.drill.opens}
    return f"{JOINTS} {SHOES}" if "ankle" in opened else JOINTS
