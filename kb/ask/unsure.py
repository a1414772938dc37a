"""Whether the words beside a fault say that its cause isn't sure: then the checks come before the drills."""

import re

from kb.ask.person import with_quotes_as_words

__all__ = ["unsure"]

_UNSURE = re.compile(
    r"\b(?:not (?:really |quite |at all )?sure (?:if|whether|why|which|what|how)|unsure"
    r"|or what\b(?! (?:i|he|she|we|they)\b)"
    r"|(?:don ?t|do not|doesn ?t|can ?t|cannot|can not) (?:\w+ )?(?:know|tell|see|say|decide)"
    r" (?:if|whether|why|which|what it|what causes)"
    r"|could be (?:\w+ )?(?:two|either|both|several|many|one of)"
    r"|(?:two|several) (?:possible )?(?:causes|reasons|suspects)"
    r"|(?:is|are) (?:it|this|that|they) (?:really |just |maybe |perhaps |all )?(?:my|his|her|their|the) \w+"
    r"|no idea (?:if|whether|why|which|what)|how (?:do|can|could) (?:i|we) (?:tell|know|find out))\b"
)
"""In folded words. Common practice, no source."""


def unsure(text: str) -> bool:
    """Whether the words ask what it is.

    >>> unsure("is it my shoulders or what?"), unsure("I am sure it is the shoulders")
    (True, False)
    """
    return bool(_UNSURE.search(with_quotes_as_words(text)))
