"""What fits one printed page: the size of the text, how much is said of each drill, and where the column breaks.

A page can't ask how long it became, so its length is reckoned here beforehand, with the widest letters and some room
to spare; the tests print what is reckoned. Where all fits, all is said at the largest size; a long chain gets
smaller text first, then says less of its checks, and in the end only what to look for, say and count.
"""

from collections.abc import Sequence
from typing import NamedTuple

from kb.show.sheet.letters import PT_MM, STRONG, lines_of
from kb.show.sheet.told import Told

__all__ = ["DETAILS", "PAPERS", "Fit", "Fixed", "Paper", "fit_of"]

LINE_EM = 1.3
"""The height of a line, ems."""

GUTTER_MM = 6.0
"""Between the two columns of drills."""

SPARE = 0.985
"""Share of the page that may be reckoned full."""

DETAILS = ("all", "checks-short", "short", "shorter", "least")
"""How much is said on paper of each drill; on a screen always all.

`checks-short` leaves out the steps of checks, and gear, which the list of what to fetch has; `short` also every cue
but the first, of checks all but the first thing to look for, and what of a warm-up is counted; `shorter` of all but the
first thing to look for, all of it of checks, whose dose and cue then share a line; `least` the steps of all.
"""


class Paper(NamedTuple):
    """A sheet of paper: its CSS name, what it measures and what its margins leave, mm."""

    name: str
    width: float
    height: float
    side: float = 9.0
    end: float = 7.0

    @property
    def across(self) -> float:
        """Width between the margins, mm."""
        return self.width - 2 * self.side

    @property
    def down(self) -> float:
        """Height between the margins, mm."""
        return self.height - 2 * self.end


PAPERS = {"a4": Paper("A4", 210, 297), "letter": Paper("letter", 215.9, 279.4)}
"""ISO 216; 8.5 by 11 in."""


class Fixed(NamedTuple):
    """What stands on a page besides the drills: paragraphs across it, and the chart's height for its width."""

    title: str
    paragraphs: tuple[str, ...]
    chart: float


class Fit(NamedTuple):
    """How a page is set: text in points, one of DETAILS, drills in the left column and that column's per cent."""

    size: float
    detail: str
    left: int
    share: int = 50
    one_page: bool = True

    @property
    def names(self) -> str:
        """What it comes to as classes of the stylesheet."""
        several = "" if self.one_page else " several"
        return f"pt-{round(self.size * 10)} detail-{DETAILS.index(self.detail)} share-{self.share}{several}"


WAYS = (
    *((size, detail) for size in (11.0, 10.5, 10.0, 9.5, 9.0) for detail in DETAILS[:2]),
    *((size, detail) for size in (9.0, 8.5, 8.0) for detail in DETAILS[2:4]),
    *((size, detail) for size in (8.0, 7.5, 7.0) for detail in DETAILS[3:]),
)
"""Sizes in points with what is said, best first."""

SHARES = (50, 48, 52, 46, 54, 44, 56, 42, 58, 40, 60)
"""How wide the left column may be, per cent, so that both end at much the same height."""


def _paragraphs(told: Told, detail: str) -> list[tuple[str, str]]:
    """The paragraphs of a drill on paper, as long as they are printed: what stands out of each, and the rest."""
    less = DETAILS.index(detail)
    with_steps = less == 0 or (not told.brief and less < 4)
    steps = " ".join(f"{n}. {step}" for n, step in enumerate(told.steps, 1)) if with_steps else ""
    all_looks = less < 2 or (not told.brief and less == 2)
    looks = " ".join((told.look, *(told.look_more if all_looks else ()))) if not told.brief or less < 3 else ""
    cues = told.cues[:1] if less > 1 else told.cues
    counted = f"{told.counted} {told.seen} {BOX * told.boxes}"
    shown = f"{told.shown} show this {told.seen} {BOX * told.shown_boxes}" if told.shown_boxes else ""
    otherwise = f"work on it {told.else_do} {told.counted} {BOX * told.boxes}"
    ends = (("If not", told.if_not), ("If early", told.if_early), ("Mind", told.mind), ("Not for", told.not_for))
    dose = told.cut + (f" Changed: {told.changed}" if told.changed else "")
    dose += f" Gear: {told.gear}" if told.gear and not less else ""
    say = ("Say", " ".join(f'"{cue}"' for cue in cues))
    last = ("", " x ".join(f"{label} {text}" for label, text in ends if text))
    if less > 2 and told.brief:
        # they run on after the dose
        dose += f" {' '.join(say)} {last[1] if told.warm_up else ''}"
        say, last = ("Say", ""), ("", "" if told.warm_up else last[1])
    labelled = [
        ("Lost", told.lost),
        ("Do", steps),
        ("Look for", looks),
        say,
        ("Move on when", "" if told.warm_up and less > 1 else shown or counted),
        ("Otherwise", otherwise if shown else ""),
        last,
    ]
    said = [
        (told.before, ""),
        *(("", care) for care in told.cares),
        (f"{told.dose}, {told.load}", dose),
        *((label, text) for label, text in labelled if text),
    ]
    return [(strong, text) for strong, text in said if strong or text]


BOX = "xxx"
"""As many letters as a tick box takes."""


def _height(told: Told, detail: str, width: float, size: float) -> float:
    """How much of a column a drill takes, mm."""
    said = _paragraphs(told, detail)
    head = lines_of(f"00 {told.name} {told.at} 00 min check", width / HEAD_EM / STRONG, size)
    text = sum(lines_of(text, width, size, strong) for strong, text in said)
    between = PARAGRAPH_EM * len(said) + DRILL_EM
    boxed = 0.5 * (2 if told.shown_boxes else 1)
    return size * PT_MM * (LINE_EM * (HEAD_EM * head + text) + boxed + between)


HEAD_EM, TITLE_EM = 1.2, 1.6
"""Size of a drill's name and of the title, ems."""

PARAGRAPH_EM, DRILL_EM = 0.15, 1.3
"""White between paragraphs and between drills, ems."""


def _chart_width(size: float) -> float:
    """How wide the chart is drawn, as a share of the page: its words are no larger than the rest."""
    return 1.0 if size > 8.5 else 0.84 if size > 7.5 else 0.72 if size > 7 else 0.56


def _fixed_height(fixed: Fixed, paper: Paper, size: float) -> float:
    em = size * PT_MM
    title = lines_of(fixed.title, paper.across / TITLE_EM / STRONG, size) * TITLE_EM * 1.2
    text = sum(lines_of(each, paper.across, size) * LINE_EM + PARAGRAPH_EM for each in fixed.paragraphs)
    return em * (title + text + 3.0) + fixed.chart * paper.across * _chart_width(size)


def _set(told: Sequence[Told], room: float, across: float, size: float, detail: str) -> Fit | None:
    """Two columns that fit a height at a size, as alike in width as they can be; None if none do."""
    for share in SHARES:
        left = [_height(each, detail, across * share / 100, size) for each in told]
        if share == SHARES[0] and sum(left) > 2 * ROUGHLY * room:
            return None
        right = (
            left if share == SHARES[0] else [_height(each, detail, across * (100 - share) / 100, size) for each in told]
        )
        height, n = min(
            ((max(sum(left[:n]), sum(right[n:])), n) for n in range(1, len(told) + 1)),
            default=(0.0, 0),
        )
        if height <= room:
            return Fit(size, detail, n, share)
    return None


MANY = (9.0, "checks-short")
"""Size and what is said where two pages don't hold it."""

LOOSELY = 0.88
"""Share of two pages that may be reckoned full: a drill that would be split leaves the end of a column white."""

ROUGHLY = 1.04
"""Where drills are so much too long for two equal columns, unequal ones are no help."""


def fit_of(told: Sequence[Told], fixed: Fixed, paper: Paper) -> Fit:
    """The best way to set some drills on one page; where none is enough, on more, column by column."""
    for size, detail in WAYS:
        room = paper.down * SPARE - _fixed_height(fixed, paper, size)
        found = _set(told, room, paper.across - GUTTER_MM, size, detail)
        if found is not None:
            return found
    return _several(told, fixed, paper)


def _several(told: Sequence[Told], fixed: Fixed, paper: Paper) -> Fit:
    """The best way to set some drills on two pages, or on as many as they take."""
    width = (paper.across - GUTTER_MM) / 2
    for size, detail in WAYS:
        drills = sum(_height(each, detail, width, size) for each in told)
        if _fixed_height(fixed, paper, size) + drills / 2 <= 2 * paper.down * LOOSELY:
            return Fit(size, detail, len(told), one_page=False)
    return Fit(*MANY, len(told), one_page=False)
