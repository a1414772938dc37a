"""What changed with a lifter of late, or is another where the lift is right: the body, shoes, days, order, floor."""

import re

__all__ = ["CHANGED"]

_SINCE = r"(?:since|after|when) (?:i|we|he|she|they|her coach|his coach)(?: ve| has| have| had)?"

_RIGHT = r"\b(?:crisp|fine|best|perfect|clean ones?|decent|straight|no (?:trouble|fault|problem)s?)\b"
_SOFT = r"\b(?:foam|puzzle|(?<!yoga )mats|carpet|grass|slop(?:e|es|ing)|cushioned|running shoes)\b"
_FIRM = r"\b(?:at (?:the|my|her|his|our) (?:club|gym)|platform|concrete|(?:firm|level) (?:floor|ground|shoes))\b"
_SOON = r"(?: \w+){0,14}? "
_NEW = r"\b(?:begg?in+ers?|(?:first|second|third) (?:weeks?|month)|(?:week|month) (?:one|two|three|[1-3])|new to)\b"

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
    (
        re.compile(
            r"\b(?:squats|squatting|deadlifts|presses|pressing|pulls)(?: \w+){0,3}? (?:in front|first|before)\b"
            rf"(?:{_SOON}{_RIGHT}|.*\b(?:snatch|clean|jerk|lift)(?:es|ed|s)? first\b)"
            rf"|{_RIGHT}{_SOON}(?:squats|deadlifts) (?:in front|first|before)\b"
            r"|\b(?:snatch|clean|jerk|lift)(?:es|ed|s)? first\b.*"
            r"\b(?:squats|deadlifts)(?: \w+){0,3}? (?:first|before)\b"
        ),
        "Is it the order? Right where the lift comes first and wrong behind squats or pulls: tired legs make it, and no"
        " drill mends those. The lift first, what strengthens last or on another day; where the room doesn't allow"
        " that, half as much of it before and a tenth less on the bar. The drills are for what stays with fresh legs.",
    ),
    (
        re.compile(rf"(?=.*{_SOFT}).*(?:{_FIRM}{_SOON}{_RIGHT}|{_RIGHT}{_SOON}{_FIRM})"),
        "Is it the floor or the shoes? Right on firm, level ground and wrong on what gives or slopes: feet can't find"
        " their place there. Bare, firm, level, dry ground and firm shoes, laced, never socks; mats only where discs"
        " land. Five lifts so, at the same weight, before anything is mended. The drills are for what stays there too.",
    ),
    (
        re.compile(
            r"\b(?:confused|lost|worse|stiff|freezes) (?:when|if|once) (?:i|we|you|somebody|anyone)"
            r" (?:talks?|explains?|speaks?)\b|\bcopies well\b|\btoo many words\b"
            r"|\b(?:copies|learns) (?:\w+ ){0,4}(?:watch\w*|seeing|copying|shown|well)\b"
        ),
        "Learns by seeing: each drill is shown twice, from the side, without a word; they copy it beside somebody who"
        " does it well, and a nod says which one was right. What a drill asks them to say or to guess is left out.",
    ),
    (
        re.compile(
            r"\beverything(?: (?:is|was|s|goes|really|at once|else|together)){0,2} (?:really|wrong|at once)\b"
            r"|\ball at once\b|\b(?:what|which) (?:do|should) i (?:pick|choose)\b"
        ),
        "Much at once: one thing only, from the top down, the rest unsaid for weeks: first what is held, overhead or on"
        " the shoulders, then from the hip, then the knee, the floor last, with the bar empty. In the first weeks"
        " nothing is mended, the lift is taught: on the terminal `drillpath path` with the lift's name.",
    ),
    (
        re.compile(
            rf"{_NEW}.*\bempty bar\b|\bempty bar\b.*{_NEW}",
        ),
        "New to it, and the bar empty: no best is known, so the per cents don't count. A stick, then the lightest bar"
        " there is; more, by the smallest discs, only after two rounds in which every repetition met the standard.",
    ),
)
"""What says so, in folded words, and what is minded because of it. Common practice, no source."""
