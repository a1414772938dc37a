"""What else was said of a lifter, in a coach's own words: the care that it calls for, and what is minded for it."""

from typing import NamedTuple

from kb.errors import BadInput

__all__ = ["SaidOf", "said_of"]


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
    from kb.ask.cautions import AFTER, CAUTION, care_of
    from kb.ask.person import minded

    care = care_of(text)
    if care.caution is not None and care.rest is None:
        raise BadInput(care.caution)
    after = f" {AFTER}" if (care.caution or "").startswith(CAUTION) else ""
    return SaidOf(f"{care.caution}{after}" if care.caution else "", minded(text))
