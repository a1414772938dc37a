"""What a coach looks at before any drill for a fault: what its entry says, and what can be behind any of them."""

from kb.terms import Fault

__all__ = ["LATE", "look_first"]

LATE = (
    "- **Right once or twice, wrong from the third, and on neither side nor at one weight more**: tired or in haste."
    " Singles, a minute's rest; if four of five are right, lift in singles like these, and the chain can wait. The day"
    " after hard sport: light, and judge it another day."
)
"""What can be behind any fault. Common practice, no source."""


def look_first(fault: Fault) -> str:
    """The section of the entry as Markdown, with what is true for any fault unless it says so itself; may be empty.

    A fault that comes without its text has none.
    """
    said = fault.sections.get("Look first", "")
    own = not said or "ingles" in said or "tired" in said
    return said if own else f"{said.rstrip()}\n{LATE}\n"
