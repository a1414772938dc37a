"""What a body reaches, on a terminal: lift by lift, then what acts on it, what helps now, and what was measured."""

from collections.abc import Mapping, Sequence

from kb.ask.screen import MORE_LEAN, LiftScreen, Reached, Screen
from kb.show.care import NO_REVIEW, USUAL
from kb.show.coach_words import listed
from kb.show.screen_words import BINDS, CAUTION, TESTS, aid_said
from kb.show.setting import Setting, hanging, rows, titled, wrapped
from kb.terms import PositionId

__all__ = ["screen_text"]

SHOWN = 6
"""Drills named at most: more is no help to who has to begin with one."""


WITHIN = "within reach"


def _count(number: int, of: str) -> str:
    return f"{number} {of}" + ("" if number == 1 else "s")


def _degrees(value: float) -> str:
    return "less than 1 degree" if value < 0.95 else _count(round(value), "degree")


def _said(reached: Reached) -> str:
    if reached.binds is None:
        more = round(reached.leans_more)
        return f"within reach, leaning {_count(more, 'degree')} more than drawn" if more >= MORE_LEAN else WITHIN
    if reached.binds == "lengths":
        return "out of reach of these lengths, whatever the joints: it would lean too far"
    lacks = [f"{BINDS[joint]} {_degrees(by)}" for joint, by in reached.short.items() if joint != "lengths"]
    return f"short: {listed(lacks)}"


def _lift(lift: LiftScreen, setting: Setting) -> list[str]:
    """A lift: every position where one is out of reach, else only those with something to say."""
    short = [reached for reached in lift.positions if reached.binds is not None]
    verdict = f"{len(short)} of {len(lift.positions)} positions out of reach" if short else "all within reach"
    said = [(reached.position.name, _said(reached)) for reached in lift.positions]
    table = rows([row for row in said if short or row[1] != WITHIN], setting)
    title = f"{lift.lift.name}: {verdict}"
    return titled(title, table, setting) or ["", setting.strong(title)]


def _answer(screen: Screen, setting: Setting) -> list[str]:
    """The first lines: what is in the way, most of it first."""
    seen = {reached.position.id: reached for lift in screen.lifts for reached in lift.positions}
    short = [reached for reached in seen.values() if reached.binds is not None]
    if not short:
        measured = "Every position is within reach of this body."
        lengths = (
            "With a supple lifter's joints every position is within reach of these lengths. Measure the joints too."
        )
        return wrapped(measured if screen.measured else lengths, setting.width)
    found = {joint for each in short for joint in each.short}
    binds = sorted(found, key=lambda joint: (-sum(joint in each.short for each in short), joint))
    named = [BINDS[each] for each in binds]
    most = max(short, key=lambda each: (each.short_by, each.position.id))
    text = (
        f"Out of reach: {_count(len(short), 'position')} of {len(seen)}. In the way: {listed(named)}, most in"
        f" {_lower(most.position.name)} ({_degrees(most.short_by)})."
    )
    return wrapped(text, setting.width)


def _lower(name: str) -> str:
    return name[:1].lower() + name[1:]


def _names(ids: Sequence[PositionId], names: Mapping[PositionId, str]) -> str:
    return listed([_lower(names[each]) for each in ids])


def _acting(screen: Screen, setting: Setting) -> list[str]:
    table = [
        (each.drill.id, f"{each.drill.name}, for {_count(len(each.positions), 'position')}")
        for each in screen.mobility[:SHOWN]
    ]
    more = len(screen.mobility) - SHOWN
    lines = rows(table, setting)
    if more > 0:
        lines += hanging("", f"and {more} more (`--json` has them all)", setting, indent=2)
    return lines


def _aids(screen: Screen, names: Mapping[PositionId, str], setting: Setting) -> list[str]:
    table = []
    for aid in screen.aids:
        opens = f"opens {_names(aid.opens, names)}" if aid.opens else "opens none yet"
        table.append((aid_said(aid.item, screen.wedge_mm), f"gives the ankle {_degrees(aid.gives_deg)}: {opens}"))
    lines: list[str] = []
    for left, right in table:
        lines += [*hanging("", left, setting, indent=2), *_indented(right, setting)]
    if screen.aids:
        lines += _indented(
            "Plates or wedges go under the heels only without load; a lifting shoe's heel may stay.", setting
        )
    return lines


def _tell(screen: Screen, setting: Setting) -> list[str]:
    """How to tell ankles from hips where the squat stops short."""
    shallow = [each for lift in screen.lifts for each in lift.positions if "depth" in each.short]
    if not shallow:
        return []
    said = "The squat stops above what the catch needs. Squat again with the heels on a plate, empty-handed: deeper"
    return [f"  {line}" for line in wrapped(f"{said} says ankles, no deeper says hips.", setting.width - 2)]


def _indented(text: str, setting: Setting) -> list[str]:
    return [f"    {line}" for line in wrapped(text, setting.width - 4)]


def _measured(screen: Screen, setting: Setting) -> list[str]:
    table = [
        (TESTS[joint][0], f"{getattr(screen.limits, joint):.0f} degrees at the {BINDS[joint]}")
        if joint != "depth"
        else (TESTS[joint][0], f"thighs {screen.limits.depth:.0f} degrees from the vertical")
        for joint in screen.measured
    ]
    lines = rows(table, setting)
    missing = [f"{said} ({option})" for joint, (said, option) in TESTS.items() if joint not in screen.measured]
    if missing:
        text = f"Not measured, so taken as a supple lifter's: {listed(missing)}. Hips with bent knees aren't measured."
        lines += [f"  {line}" for line in wrapped(text, setting.width - 2)]
    return lines


def screen_text(screen: Screen, setting: Setting) -> list[str]:
    """What this body reaches, what acts on what it doesn't, and what helps now."""
    names = {reached.position.id: reached.position.name for lift in screen.lifts for reached in lift.positions}
    lines = _answer(screen, setting)
    for lift in screen.lifts:
        lines += _lift(lift, setting)
    lines += titled("To tell apart", _tell(screen, setting), setting)
    lines += titled("What acts on it (`drillpath show NAME`)", _acting(screen, setting), setting)
    lines += titled("What helps now", _aids(screen, names, setting), setting)
    lines += titled("From your measurements", _measured(screen, setting), setting)
    lines += ["", *wrapped(CAUTION, setting.width), *wrapped(f"{USUAL} {NO_REVIEW}", setting.width)]
    return lines
