"""Words that a lifter was told and that didn't help: which they are, and what a drill says without them."""

from kb.ask.person import QUOTED, TRIED, with_quotes_as_words
from kb.saying import cues_said
from kb.speech import stems

__all__ = ["ANYWHERE", "tried", "untried"]

ANYWHERE = frozenset({"bar", "barbell", "stick", "floor", "weight", "snatch", "clean", "jerk"})
"""Words that any cue may hold: they make none the same as another. Ours."""


def tried(text: str | None) -> frozenset[str]:
    """The stems of the words that were said to a lifter, as they stand in quotation marks; none where none were.

    >>> sorted(tried('I keep telling him "elbows high" and he shrugs'))
    ['elbow', 'high']
    >>> tried('he says "just unfit"')
    frozenset()
    """
    if text is None or not TRIED.search(with_quotes_as_words(text)):
        return frozenset()
    return frozenset(stem for quoted in QUOTED.findall(text) for stem in stems(quoted)) - ANYWHERE


def untried(say: str, words: frozenset[str]) -> str:
    r"""A section *Say* without the cues that repeat one of the words; empty where all do: then it is shown instead.

    >>> untried("- Bar: Long arms.\n- Floor: Push.", frozenset({"arm"}))
    '- Floor: Push.'
    """
    items = [line for line in say.splitlines() if line.strip().startswith("- ")]
    kept = [line for line in items if all(words.isdisjoint(stems(said)) for _, said in cues_said(line))]
    return "\n".join(kept)
