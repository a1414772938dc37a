"""How easily an entry reads: Flesch's reading ease of its body.

206.835 - 1.015 x words a sentence - 0.846 x syllables a hundred words: 100 and more is read by anyone who reads at all,
60 to 70 is plain English, below 30 is a journal of science.

References
----------
R. Flesch, "A new readability yardstick", Journal of Applied Psychology 32(3), 1948, pp. 221-233: the formula, and
that a sentence is a unit of thought whose end is marked by a full stop, question or exclamation mark, colon or
semicolon. An item of a list is a unit of thought here too.
"""

import re
from typing import NamedTuple

from kb.check.long_cue import words
from kb.check.report.syllables import syllables
from kb.make.library import Library, Record

__all__ = ["Reading", "reading_ease", "readings"]

_ITEM = re.compile(r"^[ \t]*(?:[-*]|\d+\.)[ \t]+", re.MULTILINE)
_ENDS = re.compile(r"(?<=[.?!:;])[\"')*_]*\s+|\n\s*\n")
_MARKS = re.compile(r"[*_`\"]")


class Reading(NamedTuple):
    """An entry and how easily it reads; words a sentence and syllables a word say which of the two makes it hard."""

    ease: float
    id: str
    words: int
    a_sentence: float
    a_word: float


def reading_ease(text: str) -> tuple[float, int, float, float]:
    """Reading ease of a text, its words, words a sentence and syllables a word; of no words (100.0, 0, 0.0, 0.0).

    >>> round(reading_ease("The cat sat on the mat. It was fat.")[0], 1)
    117.7
    """
    sentences = [found for part in _ENDS.split(_ITEM.sub("\n\n", text)) if (found := words(_MARKS.sub(" ", part)))]
    spoken = [word for sentence in sentences for word in sentence]
    if not spoken:
        return 100.0, 0, 0.0, 0.0
    a_sentence = len(spoken) / len(sentences)
    a_word = sum(map(syllables, spoken)) / len(spoken)
    return 206.835 - 1.015 * a_sentence - 84.6 * a_word, len(spoken), a_sentence, a_word


def readings(library: Library) -> tuple[Reading, ...]:
    """Every entry that says anything, hardest first; sources are not read."""
    found = []
    records: tuple[Record, ...] = (
        *library.lifts.values(),
        *library.positions.values(),
        *library.faults.values(),
        *library.items.values(),
        *library.drills.values(),
    )
    for record in records:
        text = "\n\n".join(said for heading, said in record.sections.items() if heading != "Sources")
        ease, count, a_sentence, a_word = reading_ease(text)
        if count:
            found.append(Reading(round(ease, 1), record.id, count, round(a_sentence, 1), round(a_word, 2)))
    return tuple(sorted(found))
