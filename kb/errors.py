"""What can go wrong, as plain exceptions and one record.

DrillpathError
|- BadInput      what was asked can't be understood (exit 2)
|- NoAnswer      it was understood, and there is no answer (exit 1)
`- BrokenLibrary the entries have structural problems; nothing was built (exit 1)
"""

from typing import NamedTuple

__all__ = ["BadInput", "BrokenLibrary", "DrillpathError", "NoAnswer", "Problem"]


class Problem(NamedTuple):
    """One thing wrong in a library: where, what, and what to do about it.

    `file` is relative to the library, `line` counts from 1. `code` is the rule's name in kebab-case,
    the same that `check --explain` takes.
    """

    file: str
    line: int
    code: str
    message: str
    help: str = ""


class DrillpathError(Exception):
    """Any failure that drillpath foresees; its text is one clear sentence."""


class BadInput(DrillpathError):
    """The question names something unknown or impossible; `nearest` holds right values, best first."""

    def __init__(self, message: str, *, nearest: tuple[str, ...] = ()) -> None:
        super().__init__(message)
        self.nearest = nearest


class NoAnswer(DrillpathError):
    """The question is understood, and no answer exists; the text says why."""


class BrokenLibrary(DrillpathError):
    """The library has problems that make its entries unusable together; `problems` holds all of them."""

    def __init__(self, message: str, *, problems: tuple[Problem, ...] = ()) -> None:
        super().__init__(message)
        self.problems = problems
