"""A name with an age behind it, in words as they were typed: "Milo, 12, swings it", "Milo (12)"."""

import re

__all__ = ["named"]

_NO_NAME = (
    r"(?!(?:Snatch|Clean|Jerk|Week|Weeks|Round|Set|Sets|Day|Days|Hall|Garage|Home|Lift|Rep|Reps|January|February|March"
    r"|April|May|June|July|August|September|October|November|December|[A-Z][a-z]+day)\b)"
)
"""Words with a capital letter that stand before a number of something else."""


_ROLE = (
    r"(?:[Tt]rainee|[Ll]ifter|[Aa]thlete|[Ss]tudent|[Pp]upil|[Aa]pprentice|[Nn]ephew|[Nn]iece|[Bb]rother|[Ss]ister"
    r"|[Cc]ousin|[Mm]ember|[Jj]unior|[Gg]irl|[Bb]oy|[Ll]ad|[Ll]ass|[Kk]id|[Ss]on|[Dd]aughter)(?: of (?:mine|ours))?"
)
"""Words for somebody that an age stands behind."""


_COUNTS = r"(?:then|reps?|sets?|rest|and|at|on|in|of|singles|with|lifts|minutes|times|or|but|more|maybe)"
"""What stands behind a number that a sentence begins with and that is no age."""


def named(age: str) -> re.Pattern[str]:
    """The pattern of a name and one of these ages, themselves a pattern; or of an age that a sentence begins with.

    >>> bool(named("1[67]").search("Milo, 17, swings it")), bool(named("1[67]").search("Snatch, 17, 18"))
    (True, False)
    >>> bool(named("1[67]").search("Trainee of mine, 16, tall and thin"))
    True
    """
    behind = rf"\b(?:{_NO_NAME}[A-Z][a-z]+|{_ROLE})(?:, | \()(?:aged )?(?:{age})(?=[,;.)]| and )"
    first = rf"(?:^\s*|(?<=[.;] ))(?:aged )?(?:{age})(?=, [a-z])(?!, {_COUNTS}\b)"
    return re.compile(f"{behind}|{first}")
