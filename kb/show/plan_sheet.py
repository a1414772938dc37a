"""A plan on paper: one table a week, a box to tick where a standard was met; a phone shows the same."""

from collections.abc import Collection, Mapping, Sequence
from datetime import date
from html import escape
from math import ceil
from re import sub

from kb.ask.plan.plan import Plan, Session
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL
from kb.show.document import document
from kb.show.plan_away import away_before, away_drills
from kb.show.plan_text import due_before
from kb.show.plan_tries import tries_said
from kb.show.plan_words import (
    KINDS,
    counted,
    day_said,
    facts,
    how_it_goes,
    nothing_left,
    place_said,
    short_of,
    spare_said,
    titled,
    weighed,
)
from kb.show.setting import Setting
from kb.terms import ItemId

__all__ = ["plan_sheet"]

SIZES = (9.0, 8.5, 8.0, 7.5, 7.0, 6.5, 6.0, 5.5)
"""Sizes of printed text, pt, the largest that fits one page being taken."""

PAGE_PT, COLUMN_PT, COLUMNS = 735.0, 168.0, 3
"""What the margins leave of a letter page's height, and a column's width, pt (a4 is longer and hardly narrower)."""

LETTER_EM, LINE_EM, BESIDE_EM = 0.53, 1.2, 12.5
"""Width of a letter, height of a line, and what stands beside a drill's name, in ems."""

FULL = 0.84
"""How much of the columns may be reckoned full: a session isn't broken between two."""

STYLE = """
:root { color-scheme: light dark; --paper: #f8f4ea; --ink: #1c1915; --quiet: #564e43; --rule: #cfc4b1; }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 18px/1.45 system-ui, sans-serif; }
main { max-width: 64rem; margin: 0 auto; padding: 1rem; }
h1 { font-size: 27px; line-height: 1.2; margin: 0 0 .3em; }
h2 { font-size: 18px; margin: 1em 0 .3em; border-bottom: 2px solid var(--ink); }
h3 { font-size: 18px; margin: .8em 0 .2em; display: flex; justify-content: space-between; gap: .8em; }
h3 span, .quiet { color: var(--quiet); font-weight: 400; font-size: 16px; }
p { margin: .4em 0; }
.facts, .usual { font-weight: 600; }
ol { list-style: none; margin: 0; padding: 0; }
li { display: flex; gap: .6em; align-items: baseline; }
li .kind { flex: 0 0 3.2em; color: var(--quiet); }
li .name { flex: 1; }
li .count { color: var(--quiet); white-space: nowrap; font-size: 16px; }
li.new .name { font-weight: 600; }
input { width: 30px; height: 30px; margin: 2px 0; accent-color: var(--ink); }
.care { border-left: 4px solid var(--ink); padding-left: .6em; }
.session { break-inside: avoid; }
@media screen and (prefers-color-scheme: dark) {
  :root { --paper: #1a1714; --ink: #f3ede2; --quiet: #c2b7a6; --rule: #4b4339; }
}
@media print {
  :root { color-scheme: light; --paper: #fff; --ink: #000; --quiet: #333; --rule: #888; }
  main { max-width: none; padding: 0; }
  body { line-height: 1.2; }
  h1 { font-size: 1.6em; }
  h2, h3, h3 span, .quiet, li .count { font-size: 1em; }
  h2 { margin: .4em 0 0; border-bottom: .3mm solid #000; break-after: avoid; }
  h3 { margin: .25em 0 0; }
  p { margin: .1em 0; }
  .weeks { columns: 3; column-gap: 5mm; }
  li { gap: .4em; line-height: 1.15; align-items: start; }
  li .kind { flex-basis: 2.9em; }
  input { width: .85em; height: .85em; margin: .12em 0 0; flex: none; }
  .usual, .care { border-left-width: .4mm; }
}
"""

PAPERS = {"a4": "A4", "letter": "letter"}


def plan_sheet(
    plan: Plan,
    kit: str | None,
    have: Collection[ItemId],
    days: Mapping[int, date],
    texts: Mapping[str, Mapping[str, str]],
    paper: str = "a4",
) -> str:
    """A plan as a whole HTML document for a phone, and for `paper` ("a4" or "letter") when printed.

    The rest is as in kb/show/plan_text.py. Its policy allows its own stylesheet and nothing else.
    """
    lift = plan.path.shelf.lift
    weeks = _weeks(plan, have, days, texts)
    first = short_of(plan) if plan.sessions else nothing_left(lift.name)
    closing = [*how_it_goes(plan), ASK_FIRST, NO_REVIEW]
    size, crowded = _size(weeks, [first, USUAL, *closing])
    hidden = ".left { display: none; }" if crowded else ""
    page = f"@page {{ size: {PAPERS[paper]}; margin: 9mm 11mm; }}"
    style = f"{STYLE}{page}\n@media print {{ body {{ font-size: {size}pt; }} {hidden} }}\n"
    return document(
        f"{titled(plan)}: plan",
        style,
        [
            f"<h1>{escape(titled(plan))}</h1>",
            f'<p class="facts">{escape(" · ".join(facts(plan, kit)))}</p>',
            f"<p>{escape(first)}</p>",
            f'<p class="usual">{escape(USUAL)}</p>',
            '<div class="weeks">',
            *weeks,
            "</div>",
            *(f'<p class="quiet">{escape(text.replace("`", ""))}</p>' for text in closing),
        ],
    )


def _size(weeks: Sequence[str], around: Sequence[str]) -> tuple[float, bool]:
    """The size of printed text at which all stands on one page, pt, and whether what to do with time left must go.

    A very long plan has the smallest and takes a second page.
    """
    for crowded in (False, True):
        for size in SIZES[: 6 if not crowded else len(SIZES)]:
            column = COLUMN_PT / size
            wide = 4 + sum(1.1 * ceil(len(text) * LETTER_EM / (COLUMNS * column)) for text in around)
            room = COLUMNS * FULL * (PAGE_PT / (size * LINE_EM) - wide)
            if sum(_lines(line, column, crowded=crowded) for line in weeks) <= room:
                return size, crowded
    return SIZES[-1], True


def _lines(line: str, column: float, *, crowded: bool) -> float:
    """The lines that a piece of a week takes in a column so many ems wide."""
    text = sub("<[^>]+>", "", line)
    if line.startswith("<li"):
        name = sub('.*class="name">|<.*', "", line)
        return max(1.05, ceil(len(name) * LETTER_EM / (column - BESIDE_EM)))
    if line.startswith("<p"):
        return 0 if crowded and " left" in line else ceil(len(text) * LETTER_EM / column) + 0.2
    return {"<h2": 1.6, "<h3": 1.3}.get(line[:3], 0)


def _weeks(
    plan: Plan, have: Collection[ItemId], days: Mapping[int, date], texts: Mapping[str, Mapping[str, str]]
) -> list[str]:
    lines, week, seen = list[str](), 0, set[str]()
    for session in plan.sessions:
        if plan.until is not None and plan.until.short and session.n == plan.until.last + 1:
            lines.append("<h2>The day: what follows is too late</h2>")
        if session.week != week:
            for gone in away_before(plan, session, week):
                said, drills = away_drills(plan, gone, texts, Setting())
                lines += [f"<h2>Week {gone}, away</h2>", *(f"<p>{escape(text)}</p>" for text in (said, *drills))]
            week = session.week
            lines.append(f"<h2>Week {week}{', light' if session.light else ''}</h2>")
        due = [text for slot in session.slots for text in due_before(plan, slot, have, texts, seen)]
        lines += _session(session, days, due, plan.path.shelf.lift.id)
    return lines


def _session(session: Session, days: Mapping[int, date], due: Sequence[str], lift: str) -> list[str]:
    day = f", {day_said(days[session.n])}" if session.n in days else ""
    lines = [
        '<section class="session">',
        f"<h3>{session.n}{day}{place_said(session)} <span>{session.minutes} min</span></h3>",
    ]
    lines += [f'<p class="care">{escape(text)}</p>' for text in due]
    lines.append("<ol>")
    for slot in session.slots:
        name = escape(weighed(slot))
        lines.append(
            f'<li class="{slot.kind}"><input type="checkbox" autocomplete="off" aria-label="{name}: met">'
            f'<span class="kind">{KINDS[slot.kind]}</span><span class="name">{name}</span>'
            f'<span class="count">{counted(slot)}, {slot.minutes} min</span></li>'
        )
    lines.append("</ol>")
    lines += [f"<p>{escape(text)}</p>" for slot in session.slots for text in tries_said(slot)]
    if session.more:
        lines.append(f'<p class="quiet left">Left: {escape(spare_said(session))}</p>')
    if session.places:
        lines.append(f'<p class="quiet">Then: drillpath place {escape(lift)}</p>')
    return [*lines, "</section>"]
