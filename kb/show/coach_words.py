"""What stands in an answer, said as a coach would: what changed, how much, with what, for how long."""

from collections.abc import Collection, Sequence
from re import sub

from kb import dose
from kb.dials import Change
from kb.kit import Gear
from kb.show.helped_said import helped_said
from kb.show.setting import Setting
from kb.terms import Catch, Cause, Dose, Drill, Lift, Load, Speed, Stage, Standard

__all__ = [
    "CAUTIONS",
    "LOADS",
    "changed",
    "dosed",
    "duration",
    "either",
    "human",
    "in_hands",
    "largest_change",
    "listed",
    "moved_on",
    "place",
    "plain_markdown",
    "seen",
    "share_said",
    "throughout_said",
]

LOADS = {
    Load.NONE: "empty hands",
    Load.STICK: "stick",
    Load.LIGHT: "light weight",
    Load.WORKING: "working weight",
}
"""How heavy, as it is said."""

SPEEDS = {
    Speed.HELD: "held still",
    Speed.SLOW: "done slowly",
    Speed.PAUSED: "with a pause",
    Speed.FULL: "at full speed",
}

CATCHES = {
    Catch.NONE: "no catch",
    Catch.STANDING: "caught standing",
    Catch.POWER: "caught high",
    Catch.FULL: "caught low",
}
SPLIT_CATCHES = {**CATCHES, Catch.POWER: "caught in a dip", Catch.FULL: "caught in the split"}

PLACES = {
    "start": "the floor",
    "knee": "the knee",
    "hip": "the hip",
    "extension": "full height",
    "receive": "the catch",
    "stand": "standing",
    "rack": "the rack",
    "dip": "the dip",
    "drive": "the drive",
    "split": "the split",
    "recovered": "the recovery",
}
"""Points of the timelines as coaches say them; any other point by its own name."""

CAUTIONS = {
    "head-clearance": "headroom",
    "breath": "breath held under load",
    "drop-zone": "clear floor where the bar lands",
}
"""Cautions of entries that need more than their own word."""


def human(name: str) -> str:
    """An id as words.

    >>> human("loses-contact")
    'loses contact'
    """
    return name.replace("-", " ")


def listed(words: Sequence[str], last: str = "and") -> str:
    """Words in a row.

    >>> listed(["bar", "discs", "wall"])
    'bar, discs and wall'
    """
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def either(words: Sequence[str]) -> str:
    """Words of which one will do.

    >>> either(["snatch", "clean"])
    'snatch or clean'
    """
    return listed(words, "or")


def duration(seconds: int) -> str:
    """A time for people: seconds under a minute, else minutes rounded up.

    >>> duration(45), duration(61)
    ('45 s', '2 min')
    """
    return f"{seconds} s" if seconds < 60 else f"{dose.minutes(seconds)} min"


def place(point: str) -> str:
    """A point of a timeline as it is said.

    >>> place("start"), place("third-pull")
    ('the floor', 'the third pull')
    """
    return PLACES.get(point, f"the {human(point)}")


def _catch(word: str, lift: Lift, drill: Drill) -> str:
    """A catch in words: of a jerk in a split, but of a clean that a jerk follows in a squat."""
    points = lift.points
    at = points.index("split") if "split" in points else len(points)
    splits = any(last in points[at:] for _, last in drill.reach.values())
    return (SPLIT_CATCHES if splits else CATCHES)[Catch[word.upper()]]


def _reach(before: str, after: str, lift: Lift) -> str:
    points = lift.points
    (a_first, a_last), (b_first, b_last) = _ends(before, points), _ends(after, points)
    starts, ends = a_first != b_first, a_last != b_last
    if ends and (b_first, b_last) == (0, len(points) - 1) and b_last > a_last:
        return "the whole lift"
    first, last = place(points[b_first]), place(points[b_last])
    if b_first == b_last:
        return f"{'' if last == 'standing' else 'at '}{last} only"
    if starts and ends and not (b_first <= a_first and a_last <= b_last):
        return f"from {first} to {last}"
    if starts and (not ends or a_first - b_first >= b_last - a_last):
        return f"from {first}"
    return f"{'on to' if b_last > a_last else 'only to'} {last}"


def _ends(reach: str, points: Sequence[str]) -> tuple[int, int]:
    """A reach as its change words it, back as places: a point's own name may hold a hyphen."""
    for n, point in enumerate(points):
        if reach == point:
            return n, n
        if reach.startswith(f"{point}-") and reach[len(point) + 1 :] in points:
            return n, points.index(reach[len(point) + 1 :])
    raise ValueError(reach)


def _left_out(before: str, after: str) -> str:
    was, now = ({each for each in said.split(", ") if each != "nothing"} for said in (before, after))
    if now - was:
        return f"leaves out {listed([place(point) for point in sorted(now - was)])}"
    return f"takes in {listed([place(point) for point in sorted(was - now)])}"


def changed(change: Change, lift: Lift, drill: Drill) -> str:
    """One change from the drill before, in a few words."""
    dial, after = change.dial, change.after
    if dial == "reach":
        return _reach(change.before, after, lift)
    if dial == "leaves_out":
        return _left_out(change.before, after)
    if dial == "speed":
        return SPEEDS[Speed[after.upper()]]
    if dial == "load":
        load = Load[after.upper()]
        return f"with a {LOADS[load]}" if load is Load.STICK else LOADS[load]
    if dial == "catch":
        return _catch(after, lift, drill)
    if dial == "aid":
        return "without help" if after == "free" else f"helped by {listed([human(aid) for aid in drill.aid])}"
    return "with the feet planted" if dial == "feet" else "a smaller part again"


def largest_change(changes: Sequence[Change], lift: Lift, drill: Drill) -> str:
    """The one thing said beside a bar: the largest change from the bar above; nothing if none."""
    return changed(changes[0], lift, drill) if changes else ""


def in_hands(drill: Drill, load: Load, gear: Collection[Gear], *, work: bool = True) -> str:
    """What is in the hands; nothing for preparation and empty hands.

    Work with a light bar begins with a stick, where the drill makes sense with one: nothing is loaded on a day when it
    can't be held unloaded.
    """
    if drill.stage is Stage.PREPARE or load is Load.NONE:
        return ""
    if load is Load.LIGHT and any(each.using == "bar" for each in gear):
        return "light bar, stick first" if work and drill.load[0] <= Load.STICK else "light bar"
    return LOADS[load]


def dosed(drill: Drill, setting: Setting, *, work: bool = True) -> str:
    """How much is done: rounds, repetitions, holds; of a check one round.

    The tempo is said where the speed isn't the lift's own: there it is only how the minutes were reckoned.
    """
    given = drill.dose
    rounds, times = given.rounds if work else 1, f"\N{NO-BREAK SPACE}{setting.times}\N{NO-BREAK SPACE}"
    parts = []
    if given.reps:
        parts.append(_good_ones(given) if given.good and work else f"{rounds}{times}{dose.sets(given)[0]}")
        if given.tempo and drill.speed < Speed.FULL:
            parts[-1] += f" at {'-'.join(str(each) for each in given.tempo)}"
        if given.hold_s:
            parts.append(f"then hold {given.hold_s} s")
    elif given.hold_s:
        parts.append(f"{rounds}{times}{given.hold_s} s held")
    if given.sides == 2:
        parts.append("each side")
    if work:
        parts += _between(given)
    return ", ".join(parts)


def _good_ones(given: Dose) -> str:
    """Repetitions that must count, and how many it will take where some won't."""
    tries = dose.tries(given)
    about = f" (about {tries} tries)" if tries > given.good else ""
    return f"{given.good} good ones, sets of {given.reps} at most{about}"


def _between(given: Dose) -> list[str]:
    """What is between rounds: by the clock, or a rest where there is more than one round."""
    if given.every_s:
        return [f"one every {_clock(given.every_s)}"]
    return [f"rest {given.rest_s} s"] if given.rest_s and len(dose.sets(given)) > 1 else []


def _clock(seconds: int) -> str:
    """An interval as it is read off a clock: a minute, 2 min, 90 s."""
    whole, rest = divmod(seconds, 60)
    return f"{seconds} s" if rest else "minute" if whole == 1 else f"{whole} min"


def moved_on(standard: Standard, gone: str = "") -> str:
    """What must be seen before moving on, in words; `gone` shows besides that the fault is gone."""
    return f"{standard.count} of {standard.of}: {seen(standard, gone)}"


KEPT = (
    "A word, a mark or a stop that helped at once comes first and is gone before the last drill; a new grip or a limit"
    " stays. As far as that allows, at the weight at which the fault shows: one round with the help, one without."
)
"""What is true for any cause."""


def throughout_said(cause: Cause, worked_cause: Cause | None = None, *, briefly: bool = False, helped: str = "") -> str:
    """What to keep to in every drill for a cause, and for the one worked on where that is another's; may be nothing.

    `briefly` leaves out what is true for any cause; where it was told what `helped`, that is said instead.
    """
    both = dict.fromkeys(each.throughout for each in (cause, worked_cause) if each is not None and each.throughout)
    said = [*both, *([helped_said(helped)] if helped else [] if briefly else [KEPT])]
    return f"In every drill: {' '.join(said)}" if both else " ".join(said) if helped else ""


def seen(standard: Standard, gone: str) -> str:
    """What each repetition must show: what the standard asks, and what is there once the fault is gone.

    >>> seen(Standard(3, 3, "legs straight"), "the bar near the shirt")
    'legs straight; and the bar near the shirt'
    """
    return f"{standard.seen}; and {gone}" if gone else standard.seen


def share_said(drill: Drill, load: Load) -> str:
    """What share of a best strengthening takes at working weight; nothing where its entry names none."""
    if drill.load_from is None or drill.stage is not Stage.FINISH or load < Load.WORKING:
        return ""
    low, high = drill.load_from.percent
    return f"{low} to {high} % of the best {human(drill.load_from.lift)}"


def plain_markdown(text: str) -> str:
    """Markdown of an entry as plain text: the few marks that entries use are taken off.

    >>> plain_markdown("**Soft shoes**: start with *Arches roll in*; 2 * 3.")
    'Soft shoes: start with Arches roll in; 2 * 3.'
    """
    return sub(r"\*(\S[^*\n]*\S)\*", r"\1", text.replace("**", "").replace("`", ""))
