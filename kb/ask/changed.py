"""What changed with a lifter of late: the body, its weight, what is on the feet, how often they train."""

import re

__all__ = ["CHANGED"]

_SINCE = r"(?:since|after|when) (?:i|we|he|she|they|her coach|his coach)(?: ve| has| have| had)?"

CHANGED: tuple[tuple[re.Pattern[str], str], ...] = (
    (
        re.compile(
            r"\b(?:grown|grew|growing)(?: \w+){0,4} (?:cm|centimet\w*|inch\w*|taller|fast|spurt)\b|\bgrowth spurt\b"
            r"|\bshot up (?:this|in|by|since)\b"
        ),
        "Has grown: old marks for feet and hands no longer fit, and the feel for the bar is of a shorter body. Feet,"
        " hands and seat are set anew, with new marks; then from the top down, light, many good ones, over six weeks."
        " Say that it is normal; weight is no reward, squats may go on. Sore at heel or knee: no lifting, and ask.",
    ),
    (
        re.compile(
            r"\bcut (?:\w+ ){0,2}(?:kg|kilos?|pounds)(?! off (?:the|his|her|my) bar)\b"
            r"|\b(?:last|final) (?:kilos?|kg)(?: \w+){0,5} (?:category|class)\b|\bweight cut\b"
        ),
        "Weight was cut for the day: that alone costs strength, balance and attention. Judge the faults fed and rested,"
        " and enter a class without a late cut next time. Who eats or drinks little for it asks a doctor.",
    ),
    (
        re.compile(
            r"\b(?<!no )(?:new|different|higher) (?:\w+ )?(?:shoes?|heels?|soles?|boots)\b"
            r"|\b(?:shoes?|heels?) (?:with|of) (?:a )?higher\b"
        ),
        "Other shoes: two sessions in the old ones at the weight that shows it, nothing else changed. Gone? Then it is"
        " the shoes: those first, or light ones in the new for a fortnight. Still there: the new may stay.",
    ),
    (
        re.compile(
            rf"\b{_SINCE} (?:moved|changed|switched|started|went|came|cut)\b"
            r"(?: \w+){0,9} (?:days?|sessions?|week|grip|stance|programme?|coach)\b"
        ),
        "Something was changed just before: where it can be, change it back alone for a week, at the same weights,"
        " before anything is mended. Two things changed at once: one at a time.",
    ),
)
"""What says so, in folded words, and what is minded because of it. Common practice, no source."""
