"""Lessons on paper: a page for each, with a box a drill, and one to take home; a phone shows the same."""

from collections.abc import Sequence
from html import escape
from math import ceil
from re import sub

from kb.ask.plan.filled import Lesson
from kb.ask.plan.lesson import Line
from kb.ask.plan.lessons import Lessons
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL
from kb.show.coach_words import listed, plain_markdown
from kb.show.document import document
from kb.show.lessons_answer import LessonsAnswer, Texts
from kb.show.lessons_words import (
    HOW_IT_GOES,
    IF_MET,
    KINDS,
    body_said,
    by_turns,
    due_before,
    facts,
    headline,
    how_often,
    left_said,
    named,
    next_said,
    title,
    told,
    warm_said,
)
from kb.show.plan_sheet import PAPERS, STYLE
from kb.show.plan_words import day_said
from kb.show.setting import Setting

__all__ = ["lessons_sheet"]

SIZES = (11.0, 10.5, 10.0, 9.5, 9.0, 8.5, 8.0, 7.5, 7.0, 6.5, 6.0)
"""Sizes of printed text, pt, the largest at which every lesson fits its page being taken."""

PAGE_PT, WIDTH_PT = 720.0, 530.0
"""What the margins leave of a letter page's height, and of an a4 page's width, pt."""

LETTER_EM, LINE_EM = 0.48, 1.2
"""Width of a letter and height of a line, in ems."""

OWN_STYLE = """
h2 { display: flex; justify-content: space-between; gap: .8em; }
h2 span { font-weight: 400; white-space: nowrap; }
li { display: block; margin: .35em 0; }
li .row { display: flex; gap: .6em; align-items: baseline; }
li p { margin: 0 0 0 calc(30px + .6em); }
@media print {
  .lesson { break-after: page; }
  li { display: block; margin: .2em 0; }
  li p { margin: 0 0 0 1.25em; }
}
"""


def lessons_sheet(answers: Sequence[LessonsAnswer], paper: str = "a4") -> str:
    """Lessons as a whole HTML document for a phone, and for `paper` ("a4" or "letter") when printed.

    Of two lifts that take turns in the order of their numbers.
    """
    numbered = sorted((page for each in answers for page in _pages(each)), key=lambda page: page[0])
    pages = [page for _, page in numbered]
    turns = by_turns(answers)
    pages[0] = [*([f"<p>{escape(turns)}</p>"] if turns else []), *pages[0]]
    last = [line for each in answers for line in _after(each)]
    last += [f'<p class="quiet">{escape(text)}</p>' for text in (HOW_IT_GOES, ASK_FIRST, NO_REVIEW)]
    size = _size([*pages, last])
    page = f"@page {{ size: {PAPERS[paper]}; margin: 9mm 11mm; }}"
    style = f"{STYLE}{OWN_STYLE}{page}\n@media print {{ body {{ font-size: {size}pt; }} }}\n"
    sections = (line for each in pages for line in ('<section class="lesson">', *each, "</section>"))
    lifts = listed([each.lessons.teaching.shelf.lift.name for each in answers])
    return document(f"{lifts}: lessons", style, [*sections, *last])


def _pages(answer: LessonsAnswer) -> list[tuple[int, list[str]]]:
    """Each lesson's page with its number; on the first what the lessons are."""
    lessons, lift, seen = answer.lessons, answer.lessons.teaching.shelf.lift, set[str]()
    head = [
        f"<h1>{escape(lift.name)}</h1>",
        f'<p class="facts">{escape(" · ".join(facts(answer)))}</p>',
        f"<p>{escape(headline(lessons))}</p>",
        *(f"<p>{escape(text)}</p>" for text in body_said(answer)),
        f'<p class="usual">{escape(USUAL)}</p>',
    ]
    pages = [(lessons.begun + lesson.n, _lesson(answer, lesson, seen)) for lesson in lessons.lessons]
    number, first = pages[0]
    return [(number, [*head, *first]), *pages[1:]]


def _after(answer: LessonsAnswer) -> list[str]:
    """What is taken home, and what comes next."""
    lines = [*_home(answer), f"<p>{escape(plain_markdown(next_said(answer.lessons)))}</p>"]
    return lines + ([f"<p><code>{escape(answer.command)}</code></p>"] if answer.command else [])


def _size(pages: Sequence[Sequence[str]]) -> float:
    """The largest size of printed text at which every page holds what is on it, pt; else the smallest."""
    return next((size for size in SIZES if all(_height(page, size) <= PAGE_PT for page in pages)), SIZES[-1])


def _height(page: Sequence[str], size: float) -> float:
    """The height of a page's lines at a size, pt."""
    letters = WIDTH_PT / (size * LETTER_EM)
    lines = 0.0
    for piece in page:
        for line in sub("</p>|</div>", "\n", piece).split("\n"):
            text = sub("<[^>]+>", "", line)
            narrow = 10 if "<li" in piece or piece.startswith("<p>") else 0
            lines += ceil(len(text) / (letters - narrow)) + (0.25 if text else 0)
        lines += {"<h1": 1.5, "<h2": 0.9, "<h3": 0.9}.get(piece[:3], 0)
    return lines * size * LINE_EM


def _lesson(answer: LessonsAnswer, lesson: Lesson, seen: set[str]) -> list[str]:
    lessons, texts = answer.lessons, answer.texts
    number = lessons.begun + lesson.n
    day = f", {day_said(answer.days[number])}" if number in answer.days else ""
    minutes = lesson.minutes + lesson.left
    lines = [
        f"<h2>{escape(title(lesson, number))}{day} <span>{minutes} min</span></h2>",
        f"<p>{escape(warm_said(lessons, lesson))}</p>",
    ]
    drills, done = list[str](), set[str]()
    for line in lesson.lines:
        lines += [f'<p class="care">{escape(text)}</p>' for text in due_before(lessons, line, texts, seen)]
        drills.append(_line(lessons, line, texts, briefly=line.drill.id in done))
        done.add(line.drill.id)
    left = [f'<p class="quiet">{escape(left_said(lesson))}</p>'] if lesson.left else []
    return [*lines, "<ol>", *drills, "</ol>", *left]


def _line(lessons: Lessons, line: Line, texts: Texts, *, briefly: bool = False) -> str:
    name = escape(named(line, lessons.teaching.shelf.items))
    it = told(lessons, line, texts, Setting(fine=True))
    only = f"{IF_MET[:1].upper()}{IF_MET[1:]}" if line.using and line.kind == "lift" and briefly else ""
    say = f"Say “{it.say.rstrip('.')}”" if it.say and not briefly else ""
    until = f"Until {it.until}" if it.until and not briefly else ""
    keep = f"{it.keep[:1].upper()}{it.keep[1:]}" if not briefly else ""
    instead = f"If not: {it.instead}" if it.instead and not briefly else ""
    said = ". ".join(each.rstrip(".") for each in (it.do, say, keep, until, instead, only) if each)
    return (
        f'<li class="{line.kind}"><div class="row"><input type="checkbox" autocomplete="off" aria-label="{name}: met">'
        f'<span class="kind">{KINDS[line.kind]}</span><span class="name">{name}</span>'
        f'<span class="count">{line.minutes} min</span></div><p>{escape(said[:1].upper() + said[1:])}.</p></li>'
    )


def _home(answer: LessonsAnswer) -> list[str]:
    lessons, home = answer.lessons, answer.home
    if not home:
        return ["<h2>To take home</h2>", "<p>Nothing of this can be done alone with what is there.</p>"]
    lines = [_line(lessons, line, answer.texts) for line in home]
    often = f"<p>{escape(how_often(home, answer.home_have, lessons.teaching.shelf.items))}</p>"
    return ["<h2>To take home</h2>", "<ol>", *lines, "</ol>", often]
