"""What stands in a session, said as a coach would: when, how much, how fast, with what on the bar."""

from collections.abc import Mapping

from kb import dose as doses
from kb.ask.session.records import Block
from kb.loading import IN_HAND
from kb.show.coach_words import LOADS, moved_on, seen
from kb.show.setting import Setting
from kb.terms import Dose, Drill, DrillId, Load, Speed, Stage

__all__ = [
    "PARTS",
    "clock",
    "dose_words",
    "if_not_words",
    "is_check",
    "span",
    "standard_words",
    "tempo_words",
    "weight_words",
]

PARTS = {"warm-up": "Warm-up", "chain": "Drills", "lift": "The lift", "finish": "Finish"}
"""The parts of a session as they are headed."""


def clock(seconds: int) -> str:
    """Minutes and seconds from the start.

    >>> clock(0), clock(605)
    ('0:00', '10:05')
    """
    return f"{seconds // 60}:{seconds % 60:02}"


def span(seconds: int) -> str:
    """A stretch of time for people, to the half minute.

    >>> span(90), span(30), span(120)
    ('1 min 30 s', '30 s', '2 min')
    """
    whole, rest = divmod(seconds, 60)
    return " ".join(
        part for part in (f"{whole} min" if whole else "", f"{rest} s" if rest or not whole else "") if part
    )


def tempo_words(drill: Drill, dose: Dose) -> str:
    """How fast, where that is part of the drill: phases of two seconds and more, and pauses.

    The lift's own speed has no tempo: there it is only how the minutes were reckoned.
    """
    if dose.tempo is None or drill.speed is Speed.FULL or max(dose.tempo) < 2:
        return ""
    down, low, up, high = dose.tempo
    if drill.stage is Stage.PREPARE:
        return f"about {sum(dose.tempo)} s each"
    said = [
        f"down in {down}" if down > 1 else "",
        f"hold {low} s" if low else "",
        f"up in {up}" if up > 1 else "",
        f"stand {high} s" if high > 1 else "",
    ]
    return ", ".join(filter(None, said))


def dose_words(drill: Drill, dose: Dose, setting: Setting) -> str:
    """How much is done, in words: "3 x 5, down in 3, rest 60 s"."""
    times = f"\N{NO-BREAK SPACE}{setting.times}\N{NO-BREAK SPACE}"
    rounds, parts = len(doses.sets(dose)), []
    if dose.good:
        parts.append(f"{dose.good} good ones, {dose.reps} at a time (about {doses.tries(dose)} tries)")
    elif dose.reps:
        parts.append(f"{rounds}{times}{dose.reps}")
    if dose.reps:
        parts.append(tempo_words(drill, dose))
        parts.append(f"then hold {dose.hold_s} s" if dose.hold_s else "")
    elif dose.hold_s:
        parts.append(f"{rounds}{times}{dose.hold_s} s")
    parts.append("each side" if dose.sides == 2 else "")
    if dose.every_s:
        parts.append(f"one every {clock(dose.every_s)} min" if dose.every_s >= 60 else f"one every {dose.every_s} s")
    elif dose.rest_s and rounds > 1:
        parts.append(f"rest {dose.rest_s} s")
    return ", ".join(filter(None, parts))


def weight_words(block: Block) -> str:
    """What is in the hands: the weight and its discs where they are known, else how heavy it should feel.

    A working weight is built up to: nothing before it was as heavy.
    """
    if block.drill.stage is Stage.PREPARE or block.load is Load.NONE:
        return ""
    builds = "build up to " if block.load is Load.WORKING else ""
    first = ", after one good try unloaded" if block.unloaded_first else ""
    return _weight(block, builds) + first


def _weight(block: Block, builds: str) -> str:
    if block.loaded is not None:
        if not block.loaded.discs_kg:
            return f"the bar alone, {block.loaded.kg:g} kg"
        discs = " + ".join(f"{disc:g}" for disc in block.loaded.discs_kg)
        return f"{builds}{block.loaded.kg:g} kg: {discs} a side"
    if block.load is Load.WORKING:
        return f"{builds}{IN_HAND}"
    bar = any(gear.using == "bar" for gear in block.gear)
    return "light bar" if bar and block.load is Load.LIGHT else LOADS[block.load]


def is_check(block: Block) -> bool:
    """Whether a check is done for less than its entry asks; with minutes left over it may be done whole."""
    return not block.work and len(doses.sets(block.dose)) < len(doses.sets(block.drill.dose))


def standard_words(block: Block) -> str:
    """What must be seen before moving on; where fewer are done than the standard speaks of, all of them must be so."""
    standard, dose = block.drill.standard, block.dose
    done = dose.sides * (doses.tries(dose) if dose.reps else dose.rounds)
    if standard.of <= done:
        return moved_on(standard, block.gone)
    shown = seen(standard, block.gone)
    return f"all {done}: {shown}" if done > 1 else shown


def if_not_words(block: Block, drills: Mapping[DrillId, Drill], setting: Setting) -> str:
    """What to do where the standard isn't met: an easier version; of a check its full dose first."""
    easier = ""
    if block.if_not is not None:
        eases = next(each.eases for each in block.drill.regressions if each.drill == block.if_not)
        easier = f"{drills[block.if_not].name.lower()} ({eases})"
    if is_check(block):
        full = f"stay on it, {dose_words(block.drill, block.drill.dose, setting)}; what follows waits"
        return f"{full}; easier: {easier}" if easier else full
    if easier or block.part == "warm-up":
        return easier
    return "less weight, and slower" if block.load >= Load.LIGHT else "slower, and fewer at a time"
