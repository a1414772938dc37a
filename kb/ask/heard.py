"""What a question's words may stand for: spelling mended, other words for the same added, cues turned round."""

from typing import NamedTuple

from kb.ask.cues import answered
from kb.ask.spelling import near, parted
from kb.speech import EMPTY, IRREGULAR, SAME, stem, together
from kb.words import fold

__all__ = ["LIFTS", "Heard", "heard"]

LIFTS = ("snatch", "clean", "jerk")
"""Words that name a lift."""

SAME_WORTH, CUE_WORTH = 0.4, 0.5
"""What a word that means the same, or that a cue brings in, is worth beside the word itself."""

MOST_WORDS = 60
"""Words of a question that are heard; nobody says more of one fault."""


MOST_MENDED = 20
"""Unknown words whose spelling is mended; each costs a search of all words."""


class Heard(NamedTuple):
    """A question's words: for each, the stems it may stand for and their worth; all stems; lifts named."""

    worths: tuple[dict[str, float], ...]
    all: frozenset[str]
    lifts: frozenset[str]


def _meanings() -> dict[str, set[str]]:
    found: dict[str, set[str]] = {}
    for group in SAME:
        for word in group:
            found.setdefault(word, set()).update(group)
    return found


def _mended(words: list[str], known: frozenset[str]) -> list[tuple[str, dict[str, float]]]:
    """Each word's best stem, with every stem it may be a misspelling of; empty ones left as they are."""
    spellings = {**{word: word for word in known}, **{word: stem(word) for word in IRREGULAR}}
    spellings |= {word: word for word in EMPTY if len(word) > 3}
    found: list[tuple[str, dict[str, float]]] = []
    left = MOST_MENDED
    for word in words:
        if word in EMPTY:
            found.append((word, {}))
        elif stem(word) in known:
            found.append((stem(word), {stem(word): 1.0}))
        elif pair := parted(word, spellings):
            found += [(stem(part), {} if part in EMPTY else {stem(part): 1.0}) for part in pair]
        elif left:
            left -= 1
            close = {**near(word, spellings), **near(stem(word), spellings)}
            best = max(close, key=lambda each: (close[each], each), default=word)
            meant = {spellings[each]: worth for each, worth in close.items() if each not in EMPTY}
            found.append((spellings.get(best, best), {} if best in EMPTY else meant))
    return found


def heard(text: str, known: frozenset[str]) -> Heard:
    """What a question says, in the stems that are `known` or mean the same as one that is."""
    meanings = _meanings()
    words = list(dict.fromkeys(word for word in fold(text).split() if len(word) > 1))[:MOST_WORDS]
    mended = _mended(words, known | meanings.keys())
    said = [word for word, meant in mended if meant]
    worths = dict(pair for pair in mended if pair[1])
    everything = frozenset((*(word for word, _ in mended), *together(said)))
    asked: dict[str, dict[str, float]] = {}
    for word in together(said):
        spelt = worths.get(word, {word: 1.0})
        asked[word] = dict(spelt)
        for each, worth in spelt.items():
            for same in meanings.get(each, ()):
                asked[word][same] = max(asked[word].get(same, 0.0), worth * SAME_WORTH)
    for word in answered(everything):
        asked.setdefault(word, {word: CUE_WORTH})
    return Heard(tuple(asked.values()), everything, _lifts_named(everything))


def _lifts_named(words: frozenset[str]) -> frozenset[str]:
    named = words.intersection(LIFTS)
    return named | {"clean-and-jerk"} if named & {"clean", "jerk"} else named
