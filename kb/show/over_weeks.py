"""What a chain is beyond today: week by week, and towards a day that counts. All of it common practice, no source."""

__all__ = ["AFTER_THE_DAY", "FRESH_WEEKS", "OVER_WEEKS", "over_weeks"]

FRESH_WEEKS = 2
"""So many weeks before a day that counts nothing strengthens any more. Common practice, no source."""

AFTER_THE_DAY = "What strengthens waits until after the day: it would only tire now."

OVER_WEEKS = (
    "Over weeks: the chain first, in two or three sessions a week, until each standard is met on two days running. Then"
    " its last check opens the lift, and the rest of the time is the lift's. In the last two weeks before a day that"
    " counts nothing new: one cue, and weights that are met."
)

FIRST = (
    "the chain first in every session, while the lifter is fresh; after it the lift, only as heavy as it shows what is"
    " kept to. What strengthens comes last"
)
JOINED = (
    "the last drill before the lift as a check, then the lift up to 85 to 90 % of the best in singles; one counts only"
    " if the fault is gone in it. Two that show it: a tenth off"
)
REHEARSED = (
    "as on the day, once before people and with the breaks of the day: warm-up, then three tries. The first is a weight"
    " that was good nine times in ten, nothing that was made once. After that no drill that is new, and no second cue"
)
FRESH = (
    "singles at 60 to 80 %, few, two or three sessions, the last of them two days before. The one cue that helped most,"
    " and nothing mended any more; what still shows is lifted as it is"
)


def over_weeks(weeks: int | None, gone: str) -> list[str]:
    """How a chain goes on, a paragraph a stage; `gone` says what shows that the fault is.

    Without a day it is one paragraph. The last week keeps fresh, the one before rehearses, the one before that joins
    drill and lift; what there is before goes to the chain.

    >>> [each.partition(":")[0] for each in over_weeks(5, "")]
    ['Weeks 1 and 2', 'Week 3', 'Week 4', 'Week 5, with the day']
    >>> [each.partition(":")[0] for each in over_weeks(1, "")]
    ['Week 1, with the day']
    """
    if weeks is None:
        return [OVER_WEEKS]
    stages = [FIRST] * (weeks - 3) + [JOINED, REHEARSED, FRESH][-min(weeks, 3) :]
    found: list[str] = []
    for text in dict.fromkeys(stages):
        at = [n for n, each in enumerate(stages, 1) if each == text]
        last = f"{at[0]} and {at[-1]}" if len(at) == 2 else f"{at[0]} to {at[-1]}"
        named = f"Week {at[0]}" if len(at) == 1 else f"Weeks {last}"
        day = ", with the day" if at[-1] == weeks else ""
        count = f" Counted: {gone}." if gone and text == JOINED else ""
        found.append(f"{named}{day}: {text}.{count}")
    return found
