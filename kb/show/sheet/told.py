"""What a sheet says of one drill, and the words it says it in."""

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import NamedTuple

from kb.kit import Gear
from kb.show.coach_words import CAUTIONS, human, plain_markdown
from kb.terms import Drill, Item, ItemId

__all__ = ["Told", "fetched", "kept_whole", "looks", "lost_said", "minds", "round_shown", "steps"]

_ITEM = re.compile(r"(?:[-*]|\d+[.)])\s+")


class Told(NamedTuple):
    """One drill of a sheet, in words. What is empty isn't shown.

    `number` 0 is none; `brief` is what paper may say less of (checks, what stands around the drills), and of `warm_up`
    least; `at` the clock in a session; `boxes` how many tries its
    standard counts; `look` the first sentence of what to look for. Of a chain's check `shown` says what its round must
    show, `shown_boxes` how many tries that is, and `else_do` the dose when it doesn't.
    """

    number: int
    name: str
    work: bool
    minutes: int
    dose: str
    counted: str
    seen: str
    boxes: int
    brief: bool = False
    warm_up: bool = False
    at: str = ""
    before: str = ""
    load: str = ""
    cut: str = ""
    changed: str = ""
    cares: tuple[str, ...] = ()
    steps: tuple[str, ...] = ()
    look: str = ""
    look_more: tuple[str, ...] = ()
    cues: tuple[str, ...] = ()
    shown: str = ""
    shown_boxes: int = 0
    else_do: str = ""
    if_not: str = ""
    if_early: str = ""
    gear: str = ""
    lost: str = ""
    mind: str = ""
    not_for: str = ""


def _blocks(text: str) -> Iterator[str]:
    """Paragraphs and list items of a section, each on one line and without its mark."""
    block: list[str] = []
    for line in [*text.splitlines(), ""]:
        stripped = line.strip()
        starts = _ITEM.match(stripped)
        if block and (starts or not stripped):
            yield " ".join(block)
            block = []
        if stripped:
            block.append(stripped[starts.end() :] if starts else stripped)


def steps(drill: Drill) -> tuple[str, ...]:
    """What to do, step by step."""
    return tuple(_blocks(plain_markdown(drill.sections.get("Do", ""))))


def looks(drill: Drill) -> tuple[str, tuple[str, ...]]:
    """What the coach sees: the first sentence, then the rest by paragraph.

    >>> from kb.terms import DrillId, Stage, Standard
    >>> it = Standard(1, 1, "it")
    >>> looks(Drill(DrillId("x"), "X", (), Stage.SEGMENT, it, sections={"Look for": "Feet flat. Bar close."}))
    ('Feet flat.', ('Bar close.',))
    """
    first, *more = [*_blocks(plain_markdown(drill.sections.get("Look for", ""))), ""]
    sentence, *rest = re.split(r"(?<=[.!?])\s+", first, maxsplit=1)
    return sentence, tuple(each for each in (*rest, *more) if each)


def minds(drill: Drill) -> str:
    """What to mind: the entry's own cautions in words."""
    return ", ".join(CAUTIONS.get(caution, human(caution)) for caution in drill.cautions)


def kept_whole(dose: str) -> str:
    """A dose whose tempo isn't broken at the end of a line.

    >>> kept_whole("3 x 5 at 4-1-2-1").isascii()
    False
    """
    return re.sub(r"(?<=\d)-(?=\d)", "\N{NON-BREAKING HYPHEN}", dose)


def lost_said(gear: Collection[Gear], have: Collection[ItemId], seen: set[str]) -> str:
    """What stand-ins lose that this sheet hasn't said yet; `seen` takes it up."""
    lost = dict.fromkeys(each.lost for each in gear if each.lost and each.item not in have and each.lost not in seen)
    seen.update(lost)
    return "; ".join(lost)


def round_shown(drill: Drill) -> tuple[str, int]:
    """What the one round of a check must show, in words, and how many tries that is.

    >>> from kb.terms import Dose, DrillId, Stage, Standard
    >>> tall = Drill(DrillId("x"), "X", (), Stage.SEGMENT, Standard(5, 6, "quiet"), dose=Dose(rounds=4, reps=3))
    >>> round_shown(tall)
    ('all 3', 3)
    >>> round_shown(tall._replace(dose=Dose(rounds=3, hold_s=20)))
    ('it', 1)
    """
    standard, tries = drill.standard, drill.dose.reps * drill.dose.sides
    if standard.of <= tries:
        return f"{standard.count} of {standard.of}", standard.of
    return (f"all {tries}", tries) if tries > 1 else ("it", 1)


def fetched(gears: Sequence[Collection[Gear]], items: Mapping[ItemId, Item]) -> str:
    """Everything to fetch, each thing once, in the order in which it is needed."""
    return ", ".join(dict.fromkeys(items[each.using].name.lower() for gear in gears for each in gear))
