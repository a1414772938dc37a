"""How heavy a drill of an answer is: a share of a best, or kilograms where the best is known."""

from collections.abc import Callable, Mapping

from kb.ask.route import Entry
from kb.bests import RECKONED, Best
from kb.discs import Iron
from kb.kit import BARS
from kb.loading import weighed
from kb.show.coach_words import human, share_said
from kb.terms import Catch, Cause, ItemId, Load, Stage

__all__ = [
    "AFRAID",
    "EMPTY",
    "LIGHT_TOP",
    "LOWERED",
    "Heavy",
    "bare",
    "gently",
    "in_kilograms",
    "lightly",
    "no_more_than",
    "shares",
    "with_bar",
]

EMPTY, LOWERED = "nothing on it", "no more than is lowered by hand with ease"
"""How heavy a bar gets where there are no discs, and where nothing may be dropped. Common practice, no source."""

AFRAID = 65
"""Per cent of a best that no catch goes past for who is afraid of it: the weight is theirs to choose. Common practice,
no source."""

LIGHT_TOP = 75
"""Per cent of a best that a whole lift isn't done past at a light bar; on goes who meets the standard. Common practice,
no source."""

NEAR_ENOUGH, BAR_OF_BEST = 1.25, 0.6
"""A bar alone that is no more than so many times what suits, and no more than this share of the best, is taken all the
same where no lighter one is there. Common practice, no source."""

DISCS, DROP_FLOOR = ItemId("discs"), ItemId("drop-floor")

Heavy = Callable[[Entry], str]
"""How heavy an entry is, in words that follow what is in the hands; nothing where there is nothing to say."""


def _limit(entry: Entry) -> str:
    """What a bar without discs, or a floor on which nothing may be dropped, leaves; nothing where both are there."""
    stood_in = {each.item for each in entry.gear if each.using in BARS}
    return EMPTY if DISCS in stood_in else LOWERED if DROP_FLOOR in stood_in else ""


def with_bar(entry: Entry) -> bool:
    """Whether it is done with a bar, or with what stands in for one and is one."""
    return any(each.using in BARS for each in entry.gear)


def shares(entry: Entry) -> str:
    """The share of a best that its entry names, for work at a bar."""
    share = entry.drill.load_from
    if entry.load >= Load.LIGHT and _limit(entry):
        return _limit(entry)
    if share is None or entry.load < Load.LIGHT or not with_bar(entry) or entry.drill.stage is Stage.FINISH:
        return share_said(entry.drill, entry.load)
    low, high = share.percent
    range_said = f"{low} to {high} % of the best {human(share.lift)}"
    if not entry.work:
        return f"{low} % of the best {human(share.lift)} or so"
    return f"then {range_said}" if entry.load is Load.LIGHT else range_said


def bare(entry: Entry) -> str:
    """The same where there are no discs at all: of a bar there is only the bar."""
    return EMPTY if with_bar(entry) and entry.load >= Load.LIGHT else share_said(entry.drill, entry.load)


def no_more_than(heavy: Heavy, kg: float) -> Heavy:
    """The same where so much is all that can be put on a bar."""

    def limited(entry: Entry) -> str:
        said = heavy(entry)
        if not with_bar(entry) or entry.load < Load.LIGHT or said == EMPTY:
            return said
        return f"{said}, {kg:g} kg at most" if said else f"{kg:g} kg at most"

    return limited


def _alone(suits: float, best: float, bar: float, entry: Entry) -> str:
    """The bar alone, where it is only a little more than suits; else nothing."""
    if bar > min(suits * NEAR_ENOUGH, best * BAR_OF_BEST):
        return ""
    return f"{'then ' if entry.work else ''}the empty bar, {bar:g} kg"


def in_kilograms(bests: Mapping[str, Best], iron: Iron, lighter: Iron | None = None) -> Heavy:
    """Kilograms for a lifter of some bests, by id of a lift or drill, on this bar; a share where no best says them.

    What this bar is too heavy for is done with the `lighter` one, if there is one.
    """

    def heavy(entry: Entry) -> str:
        found = weighed(entry.drill, bests, iron) if entry.load >= Load.LIGHT else None
        if found is None or found.best is None or _limit(entry) or not with_bar(entry):
            return shares(entry)
        bar = ""
        if found.most is None and lighter is not None:
            found, bar = weighed(entry.drill, bests, lighter), "the training bar, "
        if found.least is None or found.most is None:
            suits = 0.0 if found.wanted is None else found.wanted[1]
            best = 0.0 if found.best is None else found.best.kg
            return _alone(suits, best, (lighter or iron).least, entry) or found.why
        about = "about " if found.best is not None and found.best.formula == RECKONED else ""
        least, most = (f"{bar}{about}{each.kg:g} kg" for each in (found.least, found.most))
        if entry.load is Load.WORKING:
            whole = " or to where it shows" if entry.drill.stage is Stage.WHOLE else ""
            return f"up to {most}{whole}"
        if not entry.work or found.least == found.most:
            return least
        return f"then {least}, up to {found.most.kg:g} kg while the standard is met"

    return heavy


def lightly(heavy: Heavy) -> Heavy:
    """The same where the chain ends at a light bar: the whole lift goes no further than `LIGHT_TOP`."""

    def capped(entry: Entry) -> str:
        share = entry.drill.load_from
        if share is None or entry.drill.stage is not Stage.WHOLE or entry.load is not Load.LIGHT:
            return heavy(entry)
        least, most = (min(each, LIGHT_TOP) for each in share.percent)
        drill = entry.drill._replace(load_from=share._replace(percent=(least, most)))
        return heavy(entry._replace(drill=drill))

    return capped


def gently(heavy: Heavy, cause: Cause) -> Heavy:
    """The same for who is afraid: what is caught goes no further than `AFRAID`; for another cause as it is."""
    if cause.kind != "nerve":
        return heavy

    def capped(entry: Entry) -> str:
        share = entry.drill.load_from
        if share is None or entry.drill.catch is Catch.NONE or share.percent[1] <= AFRAID:
            return heavy(entry)
        least, most = (min(each, limit) for each, limit in zip(share.percent, (AFRAID - 15, AFRAID), strict=True))
        drill = entry.drill._replace(load_from=share._replace(percent=(least, most)))
        return heavy(entry._replace(drill=drill))

    return capped
