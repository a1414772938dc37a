"""What is minded because of the place: who may not be woken, and how high the roof is."""

import re

__all__ = ["PLACES"]

PLACES: tuple[tuple[re.Pattern[str], str], ...] = (
    (
        re.compile(
            r"\b(?:neighbou?rs|neighbou?r (?:below|above|down|up|next|sleeps|works|complain|bangs|knocks)\w*"
            r"|upstairs|downstairs|baby (?:is )?(?:asleep|sleeping|naps?)"
            r"|(?:be|keep(?: it)?|stay|bit) quiet|quietly"
            r"|no (?:noise|bang\w*|(?:\w+ )?loud)|(?:nothing|not|too) loud"
            r"|(?:no|can ?t|cannot|not|nothing|may not|mustn t) (?:(?:may|must|can|is|gets|be|to be) ){0,2}"
            r"dropp?(?:ing|ed)?(?! (?:under|low|deep|in|into|quick\w*|fast)\b)"
            r"|don t drop anything)\b"
        ),
        "Nothing may drop or bang: bars are lowered in steps, to the shoulders or hips, then to the floor with a flat"
        " back, and only what can be lowered so is lifted. One that is lost is let go all the same. Jumps without a bar"
        " land on a mat that can't slide; under a bar the floor is bare, and the feet hardly leave it.",
    ),
    (
        re.compile(
            r"^(?=.*\b(?:ceiling|roof|beam|rafters?)s?\b)(?=.*\b(?:low|cm|under|above|2 \d+ ?m)\b)"
            r"(?=.*\b(?:in|at) (?:the|my|our|his|her) (?:club|gym|hall)\b|.*\b(?:outside|outdoors|garden|yard|park)\b)"
            r"(?=.*\b(?:fine|crisp|straight|good|tidy|perfect|never|nothing wrong|no (?:problem|trouble))\b)"
        ),
        "Is it the room? Right where the roof is high and wrong under this one: the body ducks, and no drill mends a"
        " ceiling. What goes overhead is done outside on flat, dry, clear ground, or where the roof is high; in here"
        " only what ends at the shoulders or below: dips, cleans, squats, footwork with empty hands. The drills are for"
        " what stays there too.",
    ),
    (
        re.compile(
            r"\b(?:ceiling|roof|beam)s? (?:is |are |at |of )?(?:\w+ )?(?:low|\d+)\b|\blow (?:ceiling|roof|beam)"
        ),
        "Low ceiling: on tiptoe, stick overhead, half a disc and a hand's width must be clear above it, lamps and beams"
        " counted. If they aren't, leave `headroom` out of `--have`: nothing then goes overhead standing.",
    ),
)
"""What says so, in folded words, and what is minded because of it. Common practice, no source."""
