"""A fault seen beside the one asked about: what the two have to do with each other, and what to do about the other."""

from collections.abc import Sequence
from typing import Any, NamedTuple

from kb.ask.instead import Instead
from kb.ask.together import Together
from kb.show.coach_words import human, listed
from kb.terms import Fault

__all__ = ["Beside", "beside_json", "beside_said", "taken_said"]


class Beside(NamedTuple):
    """A second fault, and whether its link to the first is the cause worked on.

    `chain` is what the answer tells in short besides, and `about` the fault that it is for: the second, or the source
    of both; None where the answer works on that already. `asked` says that it is what the question named, and what is
    looked at first sent to another. `drills` are the names of those in the answer that act on the second too; `fear`
    says that the cause worked on is fear, and that fear can make the second as well.
    """

    seen: Together
    taken: bool
    about: Fault | None = None
    chain: Instead | None = None
    asked: bool = False
    drills: tuple[str, ...] = ()
    fear: bool = False


TAKEN = {
    "makes": "It comes first and can make this one: so the chain takes that cause, and this one should go with it.",
    "one-cause": "One cause can make both, {cause}: so the chain takes that. The other is gone when {gone}.",
    "one-fault": "One fault can make both, {source}: so the chain takes what leads back to it.",
}
"""What follows from a second fault where the cause was chosen by it. Common practice, no source."""

NOT_TAKEN = {
    "makes": "It comes first and can make this one. If the checks say so, mend it first: this one should go with it.",
    "made": "This fault can make it, so leave it alone: once this is gone, look again. It is gone when {gone}.",
    "one-cause": "One cause can make both: {cause}. The checks tell whether it is that here.",
    "one-fault": "One fault can make both: {source}.",
    "apart": "It shows {when}, and no cause of the one makes the other: mend one at a time. {which}",
}
"""What follows from it where the cause was named, or nothing points to one. Common practice, no source."""

FEAR = "One fear can make both. As that goes, so should this: it is gone when {gone}."
ALSO = "{drills} in what follows {act} on it too: look again after that. It is gone when {gone}."
EARLIER = "Ask for that alone in three lifts: if this one goes with it, begin there."
SOURCE = "Look for that first, in three lifts: if it is there, it is mended before either, and its drills stand below."
LATER = "It may go with this one: look again once this is gone. It is gone when {gone}."


def beside_said(beside: Beside) -> str:
    """What was seen too, what that says of the fault asked about, and what to do about it, in a few sentences."""
    seen = beside.seen
    if beside.asked:
        return f"Asked about: {seen.other.name}. Once the other is gone, look again; if it stays, its drills are below."
    text = (TAKEN if beside.taken else NOT_TAKEN)[seen.relation]
    if seen.relation == "apart" and beside.fear:
        text = FEAR
    elif seen.relation == "apart" and beside.drills:
        act = "act" if len(beside.drills) > 1 else "acts"
        text = ALSO.replace("{drills}", listed(beside.drills)).replace("{act}", act)
    when, which = ("earlier in the lift", EARLIER) if seen.earlier else ("later in the lift", LATER)
    if not seen.earlier and not seen.later:
        when = "at the same time"
    if seen.source is not None and beside.about == seen.source:
        text += f" {SOURCE}"
    said = text.replace("{when}", when).replace("{which}", which).replace("{gone}", seen.other.gone)
    said = said.replace("{cause}", human(seen.cause.id) if seen.cause else "")
    return f"Seen too: {seen.other.name}. {said.replace('{source}', seen.source.name if seen.source else '')}"


def taken_said(besides: Sequence[Beside], *, commonest: bool = True) -> str:
    """How the cause was chosen where the question didn't name it."""
    if any(beside.taken for beside in besides):
        return "what else was seen points to it"
    return "the commonest cause" if commonest else "the commonest that needs a weight to show"


def beside_json(beside: Beside) -> dict[str, Any]:
    """The same for programs."""
    seen = beside.seen
    return {
        "fault": seen.other.id,
        "relation": seen.relation,
        "cause": seen.cause.id if seen.cause else None,
        "source": seen.source.id if seen.source else None,
        "taken": beside.taken,
        "said": beside_said(beside),
    }
