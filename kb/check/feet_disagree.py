"""What a drill's body has the feet do isn't what its `feet` says.

*Set up* and *Do* are read for feet that jump, hop, skip, stamp, fly or land, where `feet` is `still`; and the body
and the standard for feet that never leave the floor, where it is `land`.

Why it matters: `swap --quiet` goes by this field alone. Somebody above neighbours who trusts it must not find a
jump in the second line.

Wrong:

    # and no `feet`, which is then `still`
    ## Do
    1. Snap both feet out and land flat in the outer prints.

Right:

    feet: land
"""

import re
from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "feet-disagree"

_NOT = re.compile(
    r"\b(?:no|not|never|without an?|don't|nothing left to) (?:\w+ )?(?:jump|hop|stamp|skip)\w*", re.IGNORECASE
)
_LANDS = re.compile(
    r"(?<!bar )(?<!stick )\b(?:jump|jumps|hop|hops|skip|skips|stamp|stamps)\b(?! off the shoulders)"
    r"|\b(?:feet|shoes|soles)\b[^.,;:]{0,20}\b(?:fly|flies|jump|hop)\b"
    r"|\b(?:let|leave) the floor go\b|\bsnap (?:both|the) feet\b|\btake the feet away\b"
    r"|(?<!you )(?<!they )\bland (?:flat|softly)\b"
    r"|(?<!you )(?<!they )\bland (?:on|in) (?:the |both |your )?(?:feet|marks|prints|outer|same|very)\b",
    re.IGNORECASE,
)
_STAY = re.compile(
    r"\bfeet glued\b|\bglued feet\b|\b(?:heels and toes|feet|soles) never leave the floor\b"
    r"|\bboth soles down throughout\b|\bthey won't move\b|\bstay flat on your feet\b|\bfeet unmoved\b",
    re.IGNORECASE,
)


def rule(library: Library) -> Iterator[Problem]:
    """Every drill whose text and whose `feet` disagree."""
    for drill in library.drills.values():
        sections = drill.sections
        if drill.feet == "still":
            for heading in ("Set up", "Do"):
                found = _LANDS.search(_NOT.sub("", sections.get(heading, "")))
                if found:
                    message = f"The feet are `still`, and the text says {' '.join(found.group().split())!r}."
                    yield at(library, drill.id, f"## {heading}", CODE, message, "Say `feet: land`, or mend the text.")
        elif drill.feet == "land":
            text = "\n".join((*(sections.get(heading, "") for heading in ("Set up", "Do")), drill.standard.seen))
            found = _STAY.search(text)
            if found:
                message = f"The feet are said to land, and the text says {found.group()!r}."
                yield at(library, drill.id, "feet", CODE, message, "Leave `feet` out, or mend the text.")
