"""Placing a lifter on a terminal: what is asked first, each check, and where the answers have led."""

from collections.abc import Collection, Mapping

from kb.ask.ability.blim import held
from kb.ask.ability.fringe import Fringe
from kb.ask.ability.placement import ENOUGH, Check, Placement
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL, Due, cares
from kb.show.coach_words import CAUTIONS, LOADS, human, moved_on, plain_markdown
from kb.show.entry_lines import gear_said
from kb.show.next_text import granted_lines, ready_lines
from kb.show.setting import Setting, aside, hanging, labelled, titled, wrapped
from kb.terms import Drill, DrillId, Item, ItemId, Lift, LiftId, Load

__all__ = ["ANSWERS", "check_lines", "ending", "opening", "tries"]

ANSWERS = "y met, n not met, s skip it, q stop"
"""What may be answered to a check."""

INDENT, LABEL = 4, 9
"""Columns before a check's lines, and of the word that each begins with."""

SHOWN = 3
"""Drills shown as ready next, of those that lead on to the lift if there are any."""


def opening(placement: Placement, kit: str | None, setting: Setting) -> list[str]:
    """What is said once, before the first check."""
    lift = placement.lift.name.lower()
    left = placement.budget - placement.asked
    facts = setting.between.join([f"{kit} kit" if kit else "your gear", f"at most {_checks(left)}"])
    lines = aside(f"How much of the {lift} is held?", facts, setting)
    said = (
        "Warm up first. Each check is one drill, as light as it makes sense; what counts is its standard, seen by"
        " someone else or filmed. Stop at the first doubt: a no costs nothing.",
        f"Answer {ANSWERS}.",
        USUAL,
        ASK_FIRST,
        NO_REVIEW,
    )
    return [*lines, "", *(line for text in said for line in wrapped(text, setting.width))]


def _checks(count: int) -> str:
    return f"{count} check{'' if count == 1 else 's'}"


def tries(drill: Drill) -> str:
    """How much a check is: as many as its standard looks at.

    >>> from kb.terms import Dose, Stage, Standard
    >>> hold = Drill(DrillId("d"), "D", (), Stage.POSITION, Standard(3, 3, "still"), dose=Dose(3, hold_s=20, sides=2))
    >>> tries(hold), tries(hold._replace(dose=Dose(3, 5), standard=Standard(1, 1, "still")))
    ('3 holds of 20 s on each side', '1 try')
    """
    of, dose = drill.standard.of, drill.dose
    done = f"{of} hold{'' if of == 1 else 's'} of {dose.hold_s} s" if not dose.reps else f"{of} {_try(of)}"
    return f"{done} on each side" if dose.sides == 2 else done


def _try(count: int) -> str:
    return "try" if count == 1 else "tries"


def check_lines(
    check: Check,
    number: int,
    placement: Placement,
    *,
    have: Collection[ItemId],
    items: Mapping[ItemId, Item],
    seen: set[str],
    setting: Setting,
) -> list[str]:
    """A check in lines; `seen` holds the cautions that were said already. The drill must have its text."""
    drill = check.drill
    due = cares(Due(drill, check.load, drill.catch, check.gear or ()), seen)
    lines = [line for text in due for line in hanging("! ", text, setting)]
    again = any(answer.id == drill.id and answer.answer != "skip" for answer in placement.answers)
    lines += aside(
        f"{number:>2}  {drill.name}" + (", once more" if again else ""), f"of at most {placement.budget}", setting
    )
    if again:
        lines += hanging(
            "", "It was done before and there is still doubt; no other check tells more.", setting, indent=INDENT
        )
    done = tries(drill) + (f" with a {LOADS[check.load]}" if check.load > Load.NONE else "")
    said = [
        ("Gear", gear_said(check.gear or (), have, items)),
        ("Set up", _flowing(drill.sections.get("Set up", ""))),
        ("Do", done),
        ("Look", _flowing(drill.sections.get("Look for", ""))),
        ("Met", f"when {moved_on(drill.standard)}"),
        ("Mind", ", ".join(CAUTIONS.get(caution, human(caution)) for caution in drill.cautions)),
        ("Not for", drill.not_for or ""),
    ]
    for label, text in said:
        if text and not (again and label in ("Gear", "Set up", "Look", "Not for")):
            lines += hanging(label, text, setting, indent=INDENT, hang=LABEL)
    return lines


def _flowing(text: str) -> str:
    """A section as one paragraph."""
    return " ".join(plain_markdown(text).split())


def ending(
    placement: Placement,
    found: Fringe,
    command: str,
    *,
    drills: Mapping[DrillId, Drill],
    lifts: Mapping[LiftId, Lift],
    have: Collection[ItemId],
    items: Mapping[ItemId, Item],
    setting: Setting,
) -> list[str]:
    """Where the answers have led: what is held, how sure, what is ready next, and the command for the way on."""
    lift = placement.lift
    lines = aside(lift.name, f"after {_checks(placement.asked)}, {placement.sure:.0%} sure", setting)
    holds, lacks = placement.holds, [item for item in placement.checks if item not in placement.holds]
    said = [
        ("Holds", "; ".join(drills[each].name for each in holds) or "none of the checks"),
        ("Not yet", "; ".join(drills[each].name for each in lacks)),
        ("Doubt", _doubt(placement, drills)),
    ]
    lines += [""]
    lines += labelled(said, setting, hang=LABEL)
    lines += titled("Taken for granted", granted_lines(found.closed, drills, setting), setting)
    ready: list[str] = []
    onward = [each for each in found.ready if each.may] or list(found.ready)
    for n, each in enumerate(onward[:SHOWN], 1):
        ready += ready_lines(n, each, drills, lifts, have=have, items=items, setting=setting)
    lines += titled("Ready next", ready, setting)
    lines += titled("Go on with", [f"  {command}"], setting)
    return [*lines, "", *(line for text in (USUAL, NO_REVIEW) for line in wrapped(text, setting.width))]


def _doubt(placement: Placement, drills: Mapping[DrillId, Drill]) -> str:
    """What could be otherwise, with how likely it is held, most doubtful first; nothing once one state stands out."""
    if placement.sure >= ENOUGH or not placement.asked:
        return ""
    shares = [
        (held(placement.structure, placement.likely, 1 << n), item) for n, item in enumerate(placement.structure.items)
    ]
    open_ = sorted((abs(share - 0.5), share, item) for share, item in shares if 1 - ENOUGH < share < ENOUGH)
    return "; ".join(f"{drills[item].name} ({share:.0%} held)" for _, share, item in open_)
