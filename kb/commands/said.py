"""What else was said of a lifter, in a coach's own words: the care that it calls for, and what is minded for it."""

from typing import NamedTuple

import click

from kb.ask.cleared import CLEARED_SAYS, IF_CLEARED
from kb.errors import BadInput

__all__ = ["SaidOf", "cleared_option", "said_of"]

cleared_option = click.option("--cleared", is_flag=True, help=f"The lifter is {CLEARED_SAYS}.")
"""What whoever asks vouches for, so that words of an old or settled trouble are cautioned and then answered."""


HURT_ONCE = (
    "Hurt or ill before. Free of it today, and cleared to lift? Then this is for you: lighter than usual, unloaded"
    " first, and stop if it is felt again. If not, ask someone qualified first: a doctor or a physiotherapist."
)
"""What comes first where all that was said of the body is long over, or cleared. Common practice, no source."""

CLEARED_ONCE = (
    "Hurt or ill before; free of it today and cleared to lift, as you say. Lighter than usual, unloaded first; stop if"
    " it is felt again, and then ask whoever cleared it."
)
"""The same where whoever asks has said so. Common practice, no source."""


class SaidOf(NamedTuple):
    """A caution that comes first, if any, what to mind in every drill, and words that were tried and didn't help."""

    caution: str = ""
    minds: tuple[str, ...] = ()
    tried: frozenset[str] = frozenset()


def said_of(text: str | None, *, cleared: bool = False, helped: str = "") -> SaidOf:
    """What words beside the fault call for; nothing for none. Words that `helped` aren't taken to have failed.

    `cleared`: whoever asks says that the lifter is free of it and cleared. Raises BadInput with the caution where it is
    all that may be answered.
    """
    if text is None:
        return SaidOf()
    from kb.ask.cautions import CAUTION, care_of
    from kb.ask.person import FAILED, minded
    from kb.ask.tried import tried
    from kb.speech import stems

    care = care_of(text, cleared=cleared)
    if care.caution is not None and care.rest is None:
        raise BadInput(f"{care.caution} {IF_CLEARED}" if care.may_clear else care.caution)
    failed = tried(text) - frozenset(stems(helped))
    minds = tuple(each for each in minded(text) if failed or not helped or not each.startswith(FAILED))
    once = CLEARED_ONCE if cleared else HURT_ONCE
    return SaidOf((care.caution or "").replace(CAUTION, once), minds, failed)
