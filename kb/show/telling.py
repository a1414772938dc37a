"""How the answer of a chain is told: what was said of the lifter beside the fault, and what leads."""

from typing import NamedTuple

from kb.show.beside import Beside
from kb.show.heavy import Heavy, gently, lightly, shares
from kb.terms import Cause

__all__ = ["Telling"]


class Telling(NamedTuple):
    """What `leads`, in Markdown, and its number in what is to be looked at `first`; how `heavy` each drill is.

    `numbers` are sentences about the lifter's bests; so many `weeks` are left until a day that counts, None for none.
    `session` is the command that fills the minutes which a chain leaves over; `besides` are the faults seen too.
    `caution` is a care that what was said calls for, and `minds` what to mind in every drill because of it.
    `cause_named` says that the question named the cause, `shows_from` that it named the weight at which it shows;
    `also_causes` are those that were found beside it, and `checks_first` says that what was said doesn't settle the
    cause: the checks lead. `helped` is what made it right at once, `advice` what is answered to what others advise.
    """

    leads: str = ""
    first: int | None = None
    heavy: Heavy = shares
    numbers: tuple[str, ...] = ()
    weeks: int | None = None
    session: str = ""
    besides: tuple[Beside, ...] = ()
    caution: str = ""
    minds: tuple[str, ...] = ()
    cause_named: bool = False
    shows_from: bool = False
    also_causes: frozenset[str] = frozenset()
    helped: str = ""
    advice: tuple[str, ...] = ()
    checks_first: bool = False

    def weighs(self, cause: Cause) -> Heavy:
        """How heavy each drill is for this cause, unless it was said where it shows: gently for who is afraid."""
        return self.heavy if self.shows_from else gently(lightly(self.heavy), cause)
