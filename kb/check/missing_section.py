"""A section that every entry of its kind has is missing, or has nothing in it.

A drill has *Set up*, *Do*, *Look for*, *Say*, *Slips* and *Why*; a fault *Looks like*, *Mistaken for* and
*Not this way*; a lift *What it is* and *Done when*; a position *Feel* and *Look for*; equipment *Use*. When
a drill needs *Miss* is judged by `no-miss`, and what stands in *Say* by `cue-count`.

Why it matters: a coach reads the page between two groups and looks for each thing at its place. What isn't
there is guessed.

Wrong:

    ## Do
    Stand up and shrug.

    ## Why
    ...

Right:

    ## Do
    Stand up and shrug.

    ## Look for
    From the side: arms long until the hips are straight.

    ## Why
    ...
"""

from collections.abc import Collection, Iterator

from kb.errors import Problem
from kb.make.body_text import SECTIONS
from kb.make.files import Kind
from kb.make.library import Library, Record
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "missing-section"

_ONLY_WHERE_DUE = ("Miss", "Heard", "Look first")


def rule(library: Library) -> Iterator[Problem]:
    """Every section that an entry lacks, told at its nearest neighbour before it."""
    kinds: tuple[tuple[Kind, Collection[Record]], ...] = (
        ("lift", library.lifts.values()),
        ("position", library.positions.values()),
        ("fault", library.faults.values()),
        ("equipment", library.items.values()),
        ("drill", library.drills.values()),
    )
    for kind, records in kinds:
        for record in records:
            before = ""
            for heading in SECTIONS[kind]:
                text = record.sections.get(heading)
                if not text and heading not in _ONLY_WHERE_DUE:
                    missing = text is None
                    message = f"There is no `## {heading}`." if missing else f"`## {heading}` has nothing in it."
                    yield at(library, record.id, before if missing else f"## {heading}", CODE, message, _help(missing))
                before = f"## {heading}" if text is not None else before


def _help(missing: bool) -> str:
    return "Write it after this line." if missing else "Write it, in the second person and short sentences."
