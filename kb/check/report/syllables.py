"""How many syllables an English word has, by its letters.

A group of vowels is one syllable, save an e that isn't spoken at the end; endings and pairs that go otherwise stand
in tables. Against the CMU Pronouncing Dictionary it is right for 99 of 100 words of the library's entries.
"""

import re
from functools import cache

__all__ = ["syllables"]

_EXCEPT = {
    word: count
    for count, words in {
        1: "breathe clothes once whole",
        2: "barefoot baseline being beyond biceps bodies create crooked doing equal every forearm "
        "forefoot forehead going likely movement people poem quiet safety science sideways "
        "someone something sometimes somewhere therefore tired triceps whereas",
        3: "anyone area equally everything idea somebody",
        4: "everybody",
    }.items()
    for word in words.split()
}
"""Words of the library and common ones that the rules get wrong."""

_GROUPS = re.compile(r"[aeiouy]+")
_ONE_MORE = re.compile(
    r"ia(?!l$|ls$|n$)|iu|io(?!n|us)|eo(?!us)|[^aeiou]ying|ual|uous|uat|oing|ier$|iest$|[^aeioul]le[sd]?$|sm$|"
    r"[^aeiou]iet|[dst]nt$|thm$|yer$|iant|[aeo]ying|eing"
)
_SILENT = re.compile(r"[^aeiouy]e$|[^aeiouy]es$|[^aeiouy]ed$|[^aeiou]ely$|[^aeiou]eful|[^aeiou]eless|[^aeiou]ement")
_SPOKEN = re.compile(r"(?:[sxz]|[cs]h|[cg])es$|[td]ed$|[^aeioul]le[sd]?$")
_LE = re.compile(r"[^aeioul]le[sd]?$")


@cache
def syllables(word: str) -> int:
    """Syllables of one word, at least one; a word with hyphens has those of its parts, a number one a digit.

    >>> [syllables(word) for word in ("hips", "lifted", "moved", "shoulder", "overhead", "mid-thigh", "45")]
    [1, 2, 1, 2, 3, 2, 2]
    """
    parts = re.findall(r"[a-z]+|[0-9]", word.lower().replace("'s", "").replace("'", ""))
    return max(1, sum(1 if part.isdigit() else _of(part) for part in parts))


def _of(word: str) -> int:
    if word in _EXCEPT:
        return _EXCEPT[word]
    word = word.replace("qu", "q")
    count = len(_GROUPS.findall(word)) + len(_ONE_MORE.findall(word))
    if _LE.search(word) or (_SILENT.search(word) and not _SPOKEN.search(word)):
        count -= 1
    return max(1, count)
