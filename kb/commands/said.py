"""What else was said of a lifter, in a coach's own words: the care that it calls for, and what is minded for it."""

from typing import NamedTuple

from kb.errors import BadInput

__all__ = ["SaidOf", "said_of"]


HURT_ONCE = (
    "Hurt there once. Free of pain today, and cleared to lift? Then this is for you: lighter than usual, unloaded"
    " first, and stop if it is felt again. If not, ask someone qualified first: a doctor or a physiotherapist."
)
"""What comes first where all that was said of the body is long over, or cleared. Common practice, no source."""


class SaidOf(NamedTuple):
    """A caution that comes first, if any, and what to mind in every drill."""

    caution: str = ""
    minds: tuple[str, ...] = ()


def said_of(text: str | None) -> SaidOf:
    """What words beside the fault call for; nothing for none.

    Raises BadInput with the caution where it is all that may be answered.
    """
    if text is None:
        return SaidOf()
    from kb.ask.cautions import CAUTION, care_of
    from kb.ask.person import minded

    care = care_of(text)
    if care.caution is not None and care.rest is None:
        raise BadInput(care.caution)
    return SaidOf((care.caution or "").replace(CAUTION, HURT_ONCE), minded(text))
