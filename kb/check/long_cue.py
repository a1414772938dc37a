"""A cue is longer than six words.

Why it matters: a cue is said as the lifter sets off. What takes longer to say than the lift takes to do
comes too late, and only its end is remembered.

Wrong:

    - Keep the bar as close to you as you possibly can

Right:

    - Bar brushes the shirt
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "MOST_WORDS", "rule", "words"]

CODE = "long-cue"

MOST_WORDS = 6
"""Words of a cue at most: about two seconds said aloud, the time a lift takes. Common practice, no source."""


def words(text: str) -> list[str]:
    """The words of a text: what stands between spaces and has a letter or digit in it.

    >>> words("Don't chase it - let it come")
    ["Don't", 'chase', 'it', 'let', 'it', 'come']
    """
    return [word for word in text.split() if any(char.isalnum() for char in word)]


def rule(library: Library) -> Iterator[Problem]:
    """Every cue that is too long."""
    for drill in library.drills.values():
        for cue in drill.cues:
            count = len(words(cue))
            if count > MOST_WORDS:
                message = f"The cue `{cue}` has {count} words, and a cue has at most {MOST_WORDS}."
                yield at(library, drill.id, "## Say", CODE, message, "Say the one thing that has to change.")
