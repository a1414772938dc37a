"""Cautions, each at its own place and no other: rules that look at an entry and say what is due before it.

The usual line stands on every chain; these stand where they apply, each once in an answer.
"""

from collections.abc import Callable, Iterable
from typing import NamedTuple

from kb.kit import Gear
from kb.show.coach_words import plain_markdown
from kb.terms import Catch, Drill, Load

__all__ = ["AFRAID", "ASK_FIRST", "NO_REVIEW", "RULES", "UNDROPPED", "USUAL", "Due", "asks_first", "begun", "cares"]

USUAL = "Stop on pain, not on effort. Load only what was held unloaded. Keep the floor clear."
"""The one line on every chain and sheet."""

NO_REVIEW = "No qualified coach has reviewed this library yet."
"""What is true of it, said on every answer that someone may act on."""

ASK_FIRST = (
    "Ask someone qualified first where there is pain, a past dislocation, tingling hands in the rack, dizziness, high"
    " blood pressure or pregnancy (the breath is held at working weight), and for children."
)


AFRAID = (
    "Who is afraid: the way out comes first, with a stick, until it is dull. Then small steps: the lifter chooses depth"
    " and weight of each try and says them aloud; nothing by surprise, no disc unasked, nobody looking on who isn't"
    " wanted. A step that isn't met is made smaller, never louder; three good ones end it for today."
)
"""How to work meanwhile. Common practice, no source."""


def asks_first(drills: Iterable[Drill]) -> bool:
    """Whether `ASK_FIRST` is due: the breath is held under load, or a drill isn't for everyone."""
    return any(drill.not_for or "breath" in drill.cautions for drill in drills)


class Due(NamedTuple):
    """An entry as its cautions see it."""

    drill: Drill
    load: Load
    catch: Catch
    gear: tuple[Gear, ...]

    def uses(self, *items: str) -> bool:
        """Whether it is done with one of some items, themselves or as stand-ins."""
        return any(gear.using in items for gear in self.gear)


UNDROPPED = "nothing may be dropped"
"""Stands among what was said where that is so: `begun`."""

LOWERED = (
    "First, the way out: nothing may be dropped on this floor. Only a light bar that can be lowered by hand, and no try"
    " that could be missed. What goes wrong in front is brought down to the thighs; what goes behind is let go,"
    " whatever the floor, and you step forward."
)
"""Instead of how to miss, where a bar may not fall. Common practice, no source."""


def begun(gear: Iterable[Gear]) -> set[str]:
    """What an answer begins with as said, by the gear of all its drills: whether a bar may be dropped there."""
    return {UNDROPPED} if any(each.item == "drop-floor" and each.using == "bar" for each in gear) else set()


Rule = Callable[[Due], str | None]


def _miss(due: Due) -> str | None:
    """How to miss, before any full-depth drill with a bar overhead or racked above a stick."""
    if due.catch < Catch.FULL or due.load < Load.LIGHT or "Miss" not in due.drill.sections:
        return None
    said = " ".join(plain_markdown(due.drill.sections["Miss"]).split())
    return f"First, how to miss. {said}{'' if 'nobody' in said.lower() else ' Nobody touches a missed lift.'}"


def _two_misses(due: Due) -> str | None:
    if due.catch < Catch.POWER or due.load < Load.LIGHT:
        return None
    if due.catch is Catch.FULL and "two misses" in due.drill.sections.get("Miss", "").lower():
        return None  # its own text has just said so
    return "Two misses running end that weight; nothing is loaded on a day when it can't be held unloaded."


def _around_a_bar(due: Due) -> str | None:
    if due.load < Load.LIGHT or not due.uses("bar"):
        return None
    headroom = ", a look at the headroom" if "head-clearance" in due.drill.cautions else ""
    return f"Collars on, 2 m clear around the bar, dry shoes{headroom}."


def _at_home(due: Due) -> str | None:
    return "No socks on a hard floor; never lean or hang on a broom." if due.uses("broom") else None


def _under_the_heels(due: Due) -> str | None:
    if not due.uses("wedge") or due.load > Load.STICK:
        return None
    return "Plates or wedges go under the heels only without load."


def _behind_the_neck(due: Due) -> str | None:
    if "behind-neck-rack" not in due.drill.target_position.values() and "behind-neck" not in due.drill.id:
        return None
    return "Never drop the bar onto the neck."


def _partner(due: Due) -> str | None:
    if not due.uses("partner") and not {"partner", "hand"} & set(due.drill.aid):
        return None
    return "Ask before touching. A partner or spotter never catches a bar."


RULES: tuple[Rule, ...] = (
    _around_a_bar,
    _miss,
    _two_misses,
    _behind_the_neck,
    _under_the_heels,
    _partner,
    _at_home,
)
"""The rules, in the order in which what they say is read."""


def cares(due: Due, seen: set[str]) -> list[str]:
    """What is due before an entry and hasn't been said yet; `seen` takes it up.

    How to miss is said once for each lift whose drills need it, or once that nothing may fall; the rest once.
    """
    found = []
    for rule in RULES:
        key = rule.__name__
        if rule is _miss:
            key += "" if UNDROPPED in seen else due.drill.lifts[0]
        said = rule(due) if key not in seen else None
        if said and rule is _miss and UNDROPPED in seen:
            said = LOWERED
        if said:
            seen.add(key)
            found.append(said)
    return found
