"""What else was said of a lifter, in a coach's own words: the care that it calls for, and what is minded for it."""

from collections.abc import Callable
from functools import wraps
from typing import Any, NamedTuple, TypeVar

import click

from kb.ask.cleared import CLEARED_SAYS, IF_CLEARED
from kb.errors import BadInput

__all__ = ["SaidOf", "cleared_option", "said_first", "said_of"]

Command = TypeVar("Command", bound=Callable[..., Any])

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

_NOT_FOR_A_READER = ("as_json", "as_csv", "message")
"""Forms of an answer that nothing may stand before."""


class SaidOf(NamedTuple):
    """A caution that comes first, if any, what to mind in every drill, and words that were tried and didn't help."""

    caution: str = ""
    minds: tuple[str, ...] = ()
    tried: frozenset[str] = frozenset()


def said_of(text: str | None, *, cleared: bool = False, helped: str = "", in_a_chain: bool = True) -> SaidOf:
    """What words beside the fault call for; nothing for none.

    Words that `helped` aren't taken to have failed, but call for a care like the others. `cleared`: whoever asks says
    that the lifter is free of it and cleared; `in_a_chain`: what to ask a chain for is told too. Raises
    BadInput with the caution where it is all that may be answered.
    """
    if text is None and not helped:
        return SaidOf()
    text = text or ""
    from kb.ask.cautions import CAUTION, care_of
    from kb.ask.person import FAILED, minded
    from kb.ask.tried import tried
    from kb.speech import stems

    care = care_of(". ".join(filter(None, (text, helped))), cleared=cleared)
    if care.caution is not None and care.rest is None:
        raise BadInput(f"{care.caution} {IF_CLEARED}" if care.may_clear else care.caution)
    failed = tried(text) - frozenset(stems(helped))
    told = minded(text, in_a_chain=in_a_chain)
    minds = tuple(each for each in told if failed or not helped or not each.startswith(FAILED))
    once = CLEARED_ONCE if cleared else HURT_ONCE
    return SaidOf((care.caution or "").replace(CAUTION, once), minds, failed)


def said_first(command: Command) -> Command:
    """Add `--said` and `--cleared`: the care and what to mind stand before the answer of `command`.

    Where the answer is for programs, a table or a message, they go to standard error. BadInput comes out of the command
    where a care is all that may be answered: then nothing else is asked.
    """

    @click.option("--said", metavar="WORDS", help="What else was said of the lifter: a care it calls for comes first.")
    @cleared_option
    @wraps(command)
    def asked(*args: Any, said: str | None, cleared: bool, **rest: Any) -> Any:
        beside = said_of(said, cleared=cleared, in_a_chain=False)
        if beside.caution or beside.minds:
            from kb.show.chain_text import said_text
            from kb.show.setting import setting_of

            lines = "\n".join(said_text(beside.caution, beside.minds, setting_of()))
            click.echo(lines.strip("\n") + "\n", err=any(rest.get(form) for form in _NOT_FOR_A_READER))
        return command(*args, **rest)

    return asked  # type: ignore[return-value]
