"""What to put on the bar for a drill: on a terminal and for programs."""

from collections.abc import Mapping
from math import ceil
from typing import Any, NamedTuple

from kb.bests import SHARE_OF_REPS, Best
from kb.discs import KG_OF_LB, Iron, disc_list
from kb.kit import Gear
from kb.loading import IN_HAND, Loaded, Weighed
from kb.show.after_misses import after_misses
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL, Due, cares
from kb.show.coach_words import dosed, moved_on
from kb.show.setting import Setting, hanging, labelled, wrapped
from kb.terms import Drill, ItemId, Load

__all__ = ["Answer", "discs_said", "load_json", "load_text", "weight_said"]

LABEL = 11
"""Columns of the word before a fact."""

KG_OF_A_ROUNDING = 0.001
"""Weights are kept to a gram, kg."""

FULL_SIZE_KG = 10.0
"""Discs of this weight and more are 450 mm across (2.04 IWF TCRR): with one on each side the bar lies at its height."""

STEP_KG, SMALL_STEP_KG, SMALL_BEST_KG = 2.5, 1.0, 40.0
"""By how much a best goes up at a time; the small step in the snatch, and below the small best. Common practice, no
source."""

NEXT_TIME = (
    "The standard met in two sessions running: 2.5 kg more, 1 kg in the snatch or below 40 kg. Missed once: the same"
    " again. Missed twice: a tenth off for a week. A share of a best says where to begin; whether more goes on, the"
    " standard says, and one lucky lift doesn't."
)
"""How a weight goes on from session to session. Common practice, no source."""


class Answer(NamedTuple):
    """What a drill weighs for a lifter, and what is needed to say so.

    `floor` when it begins with the bar on the floor; `given` is a weight that was asked for outright, or
    that goes after those that were `missed`, kg, the least first.
    """

    drill: Drill
    found: Weighed
    iron: Iron
    at: Load
    bests: Mapping[str, Best]
    names: Mapping[str, str]
    floor: bool = False
    given: Loaded | None = None
    missed: tuple[float, ...] = ()

    @property
    def on_the_bar(self) -> Loaded | None:
        """What is answered: the weight given, else by the bests the least or the most."""
        return self.given or (self.found.most if self.at is Load.WORKING else self.found.least)


def _in_unit(kg: float, iron: Iron) -> float:
    return round(kg / KG_OF_LB, 2) if iron.unit == "lb" else kg


def weight_said(kg: float, iron: Iron) -> str:
    """A weight in the unit that is used."""
    return f"{round(_in_unit(kg, iron), 1):g} {iron.unit}"


def discs_said(bar: Loaded, iron: Iron) -> str:
    """The discs for each side, innermost first, and the bar they go on."""
    discs = disc_list(tuple(_in_unit(disc, iron) for disc in bar.discs_kg))
    collars = f", collars {weight_said(bar.collars_kg, iron)} together" if bar.collars_kg else ""
    each = f"{discs} on each side" if bar.discs_kg else "no discs"
    return f"{each}, bar {weight_said(bar.bar_kg, iron)}{collars}"


def load_text(answer: Answer, setting: Setting) -> list[str]:
    """The weight first, then the discs, how far it may go and why; cautions where they apply."""
    drill, bar = answer.drill, answer.on_the_bar
    if bar is None:
        lines = wrapped(f"{drill.name}: {answer.found.why}.", setting.width)
        facts = [("Give", _what_to_give(answer))]
    else:
        lines = [setting.strong(f"{drill.name}: {weight_said(bar.kg, answer.iron)}")]
        facts = [("Discs", discs_said(bar, answer.iron)), ("Up to", _up_to(answer, bar)), ("Why", _why(answer))]
    too_much = _after(answer) if answer.missed else _too_much(answer)
    lines += wrapped(too_much, setting.width) if too_much else []
    facts += [] if too_much else [("How much", dosed(drill, setting)), ("More when", moved_on(drill.standard))]
    facts += [] if answer.missed else [("Next time", NEXT_TIME)]
    if drill.load[1] < Load.LIGHT:
        facts = facts[:-2]
    lines += labelled(facts, setting, indent=2, hang=LABEL)
    lines += _cautions(answer, setting)
    closing = [USUAL, *([ASK_FIRST] if answer.at is Load.WORKING else []), NO_REVIEW]
    return [*lines, "", *(line for text in closing for line in wrapped(text, setting.width))]


def _what_to_give(answer: Answer) -> str:
    """What would tell the kilograms, where no best does."""
    share = answer.drill.load_from
    if answer.found.why != IN_HAND:
        return ""
    if "bar" not in answer.drill.equipment:
        return "nothing: it is done without a bar, so no discs are counted out"
    if share is None:
        return "nothing: no share of a best is known for it"
    low, high = share.percent
    return (
        f"the best {answer.names[share.lift].lower()} for kilograms, as in --best {share.lift}=80"
        f" ({low} to {high} % of it)"
    )


def _up_to(answer: Answer, bar: Loaded) -> str:
    most = answer.found.most
    if most is None or most.kg <= bar.kg or answer.missed:
        return ""
    return f"{weight_said(most.kg, answer.iron)}: {discs_said(most, answer.iron)}"


def _why(answer: Answer) -> str:
    """Which share of which best it is."""
    best, share = answer.found.best, answer.drill.load_from
    if best is None or answer.given is not None:
        return ""
    kg = weight_said(best.kg, answer.iron)
    by = f", by {best.formula} (the least of three formulas)" if best.formula else ""
    rounded = "rounded down to what the discs make"
    low, high = share.percent if share else (1, 1)
    if best is answer.bests.get(answer.drill.id):
        reps = answer.drill.dose.reps + 2
        lighter = f"; light is {low}/{high} of that" if answer.at is Load.LIGHT and low < high else ""
        return (
            f"two good reps in hand: {reps} can be done at {SHARE_OF_REPS[reps]} % of the best"
            f" {answer.drill.name.lower()}, {kg}{by}{lighter}; {rounded}"
        )
    of = answer.names[share.lift].lower() if share else ""
    begun = ", begun with the bar alone" if answer.on_the_bar == answer.found.least and _lighter(answer) else ""
    return f"{low} to {high} % of the best {of}, {kg}{by}; {rounded}{begun}"


def _lighter(answer: Answer) -> bool:
    """Whether the least that was wanted is less than the bar."""
    least, wanted = answer.found.least, answer.found.wanted
    return least is not None and wanted is not None and wanted[0] < least.kg - KG_OF_A_ROUNDING


def _after(answer: Answer) -> str:
    """What goes after misses, in words."""
    bar = answer.on_the_bar
    if bar is None:
        return ""
    step = SMALL_STEP_KG if "snatch" in answer.drill.lifts and bar.kg < SMALL_BEST_KG else STEP_KG
    missed = [weight_said(each, answer.iron) for each in answer.missed]
    return after_misses(missed, weight_said(bar.kg, answer.iron), weight_said(step, answer.iron))


def _too_much(answer: Answer) -> str:
    """What is said first of a weight that was asked for and is above the bests' range; nothing of any other."""
    given, most, best = answer.given, answer.found.most, answer.found.best
    if given is None or most is None or best is None or given.kg <= most.kg:
        return ""
    asked, right = weight_said(given.kg, answer.iron), weight_said(most.kg, answer.iron)
    said = f"{asked} is {round(100 * given.kg / best.kg)} % of the best, {weight_said(best.kg, answer.iron)}:"
    if given.kg <= best.kg:
        return f"{said} for singles at most, and not in this drill's sets, which go to {right}."
    step = SMALL_STEP_KG if "snatch" in answer.drill.lifts or best.kg < SMALL_BEST_KG else STEP_KG
    sessions = 2 * ceil((given.kg - best.kg) / step)
    return (
        f"{said} not yet. Sets go to {right}; a best goes up by {step:g} kg, each after two sessions in which the one"
        f" before was good, so {asked} is {sessions} sessions away at least."
    )


def _cautions(answer: Answer, setting: Setting) -> list[str]:
    bar, drill = answer.on_the_bar, answer.drill
    if bar is None:
        return []
    gear = (Gear(ItemId("bar"), ItemId("bar")),)
    said = cares(Due(drill, answer.at, drill.catch, gear), set())
    if drill.load[0] < Load.LIGHT:
        said.append("Nothing goes on the bar before the form without a weight met the standard.")
    if answer.floor and not any(disc >= FULL_SIZE_KG for disc in bar.discs_kg):
        said.append(
            "Without discs of full size (450 mm) the bar lies too low: set it on blocks, its middle 22.5 cm up."
        )
    return ["", *(line for text in said for line in hanging("! ", text, setting))]


def load_json(answer: Answer) -> dict[str, Any]:
    """The same for programs; weights in kilograms, and in pounds too where those were asked for."""
    found, best = answer.found, answer.found.best
    return {
        "version": 1,
        "drill": {"id": answer.drill.id, "name": answer.drill.name},
        "at": answer.at.word,
        "load": _bar_json(answer.on_the_bar, answer.iron),
        "most": _bar_json(found.most, answer.iron),
        "why": found.why if answer.on_the_bar is None else "",
        "best": None if best is None else {"kg": round(best.kg, 3), "formula": best.formula},
        "wanted_kg": None if found.wanted is None else [round(kg, 3) for kg in found.wanted],
        **({"after": _after(answer)} if answer.missed else {}),
    }


def _bar_json(bar: Loaded | None, iron: Iron) -> dict[str, Any] | None:
    if bar is None:
        return None
    said: dict[str, Any] = {
        "kg": bar.kg,
        "bar_kg": bar.bar_kg,
        "discs_kg": list(bar.discs_kg),
        "collars_kg": bar.collars_kg,
    }
    if iron.unit == "lb":
        said |= {
            "lb": _in_unit(bar.kg, iron),
            "bar_lb": _in_unit(bar.bar_kg, iron),
            "discs_lb": [_in_unit(disc, iron) for disc in bar.discs_kg],
        }
    return said
