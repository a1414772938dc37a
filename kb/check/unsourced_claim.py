"""A line of *Sources* isn't a claim with its source and who could check it.

Each is an item of a list: a sentence, then in brackets its source, an upright bar, and one of `coach`,
`physiotherapist`, `doctor`, `biomechanist`, `referee`, `supplier`. A fact of the trade without a source says
`common practice`; any other source is one of the bibliography at the end of the page of claims.

Why it matters: a reader who doubts a sentence can look it up, or knows whom to ask. A source that nobody can
find is worth less than none.

Wrong:

    ## Sources
    - Studies show that this works.

Right:

    ## Sources
    - Attention on the bar works better than attention on a limb. [Wulf 2013 | coach]
"""

from collections.abc import Iterator

from kb.check.bibliography import BIBLIOGRAPHY, CHECKERS, COMMON
from kb.check.sourced import claims_of, records
from kb.errors import Problem
from kb.make.files import nearest
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "unsourced-claim"

_FORM = "Write `- A sentence. [common practice | coach]`, or another source and another who could check it."


def rule(library: Library) -> Iterator[Problem]:
    """Every item of *Sources* that can't be read, or whose source or checker is unknown; and a section without any."""
    for record in records(library):
        text = record.sections.get("Sources")
        for message, help_ in _wrong(text) if text else ():
            yield at(library, record.id, "## Sources", CODE, message, help_)


def _wrong(text: str) -> Iterator[tuple[str, str]]:
    found = list(claims_of(text))
    if not found:
        yield "There is no claim: each is an item of a list.", _FORM
    for claim in found:
        if isinstance(claim, str):
            yield f"`{claim}` names no source and nobody who could check it.", _FORM
            continue
        if claim.source != COMMON and claim.source not in BIBLIOGRAPHY:
            yield (
                f"The source `{claim.source}` isn't in the bibliography.",
                _near(claim.source, [COMMON, *BIBLIOGRAPHY]),
            )
        if claim.checker not in CHECKERS:
            yield f"`{claim.checker}` is nobody who could check a claim.", _near(claim.checker, CHECKERS)


def _near(said: str, known: list[str] | tuple[str, ...]) -> str:
    return nearest(said, known) or f"Known are {', '.join(f'`{each}`' for each in known[:6])}."
