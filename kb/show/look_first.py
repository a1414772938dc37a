"""What a coach looks at before any drill for a fault: what its entry says, and what can be behind any of them."""

from re import findall, search

from kb.errors import BadInput
from kb.terms import Fault

__all__ = ["LATE", "first_said", "look_first", "sends_to"]

LATE = (
    "**Right once or twice, wrong from the third, and on neither side nor at one weight more**: tired or in haste."
    " Singles, two minutes' rest; if four of five are right, lift so, and the chain can wait. Done so already: half"
    " as many, longer rests, and hard days further apart. After a day's work or hard sport: light, and judge it rested."
)
"""What can be behind any fault. Common practice, no source."""

GONE = "If that mends it, lift like that and leave the drills; they are for what stays."
"""What to do once it was looked at."""


def look_first(fault: Fault, *, without: int | None = None) -> str:
    """The section of the entry as a numbered list in Markdown, and what is true for any fault; `without` one of them.

    May be empty: a fault that comes without its text has none.
    """
    return "\n".join(f"{n}. {item}" for n, item in enumerate(_items(fault), 1) if n != without)


def first_said(fault: Fault, number: int) -> str:
    """The one that fits what was seen, to lead an answer, in Markdown; BadInput for a number that there isn't."""
    return f"First: {_item(fault, number)} {GONE}"


def sends_to(fault: Fault, number: int) -> frozenset[str]:
    """The names in it of faults with which to start, if any; BadInput for a number that there isn't."""
    return frozenset(findall(r"(?<!\*)\*([^*]+)\*(?!\*)", _item(fault, number)))


def _item(fault: Fault, number: int) -> str:
    items = _items(fault)
    if not 0 < number <= len(items):
        raise BadInput(f"--first {number}: {fault.name} has {len(items) or 'no'} things to look at first")
    return items[number - 1]


def _items(fault: Fault) -> list[str]:
    """Each of them, unless the entry says what is true for any itself."""
    said = fault.sections.get("Look first", "")
    items = [each.strip() for each in f"\n{said.strip()}".split("\n- ")[1:]]
    return items if not items or search(r"\b(?:[Ss]ingles|tired)\b", said) else [*items, LATE]
