"""What a screen says of a fault's causes: why each moved, for a terminal and for programs."""

from collections.abc import Mapping, Sequence
from typing import Any

from kb.ask.by_screen import Verdict
from kb.show.coach_words import human
from kb.show.screen_words import BINDS, TESTS
from kb.show.setting import Setting, hanging, titled, wrapped
from kb.terms import PositionId

__all__ = ["by_screen_json", "by_screen_line", "by_screen_text"]


def _degrees(value: float) -> str:
    count = max(1, round(value))
    return f"{count} degree" + ("" if count == 1 else "s")


def _reason(verdict: Verdict, names: Mapping[PositionId, str]) -> str:
    """Why a cause stands where it does, in a sentence without its stop."""
    if verdict.position is None:
        test, option = TESTS.get(verdict.joint, ("", ""))
        return f"not measured ({test}: {option})" if test else "no tape tells"
    where = names[verdict.position]
    where, part = where[:1].lower() + where[1:], BINDS[verdict.joint]
    if verdict.moved == "down":
        return f"{part}: {verdict.degrees:.0f} degrees, and {where} is within reach"
    if verdict.lacks:
        return f"{part}: {_degrees(verdict.degrees)} short for {where}"
    return f"{part}: {where} is within reach only by leaning {_degrees(verdict.degrees)} more"


WORDS = {"up": ", moved up", "down": ", ruled out", "": ""}

ERROR = (
    "A few degrees lie within a tape's error, and this is no diagnosis: look at the lifter, and do the quick checks."
)


def by_screen_text(verdicts: Sequence[Verdict], names: Mapping[PositionId, str], setting: Setting) -> list[str]:
    """Every cause in its new order, with the reason."""
    lines: list[str] = []
    for n, verdict in enumerate(verdicts, 1):
        text = f"{human(verdict.cause.id)}{WORDS[verdict.moved]}. {_sentence(_reason(verdict, names))}"
        lines += hanging(f"  {n}. ", text, setting)
    return [*titled("Causes by the measurements", lines, setting), *wrapped(ERROR, setting.width)]


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}."


def by_screen_json(verdicts: Sequence[Verdict], names: Mapping[PositionId, str]) -> list[dict[str, Any]]:
    """The same for programs."""
    return [{"cause": each.cause.id, "moved": each.moved or None, "why": _reason(each, names)} for each in verdicts]


def by_screen_line(verdicts: Sequence[Verdict], names: Mapping[PositionId, str]) -> str:
    """The cause to try first, and why, in one line."""
    first = verdicts[0]
    return f"By the measurements, {human(first.cause.id)} first: {_reason(first, names)}."
