"""A sheet as a record and as HTML: one page that a phone shows and a printer prints, without script."""

from base64 import b64encode
from collections.abc import Sequence
from functools import cache
from hashlib import sha256
from pathlib import Path
from re import search
from typing import TYPE_CHECKING, NamedTuple

from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL
from kb.show.sheet.fit import PAPERS, Fit, Fixed, fit_of
from kb.show.sheet.told import Told

if TYPE_CHECKING:
    from jinja2 import Environment

__all__ = ["Sheet", "html", "stylesheet"]

SMALL = 8.5
"""Text below this size, pt, is worth more than pictures over the chart."""

TEMPLATES = Path(__file__).parent / "templates"


class Sheet(NamedTuple):
    """What stands on a sheet. `chart` is HTML of ours (kb/show/chart_svg.py); everything else is text.

    `lower_chart` stands in its place where the page would else be set small.

    `facts` are short, beside the title; `because` and `notes` paragraphs before the drills, `after` after them.
    `in_short` is what stands in for `because` where that would take a second page.
    """

    title: str
    facts: tuple[str, ...]
    chart: str
    drills: tuple[Told, ...]
    fetch: str
    because: tuple[str, ...] = ()
    in_short: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    ask_first: bool = False
    lower_chart: str = ""


@cache
def stylesheet() -> str:
    """The stylesheet of sheets, with the chart's; the size of the paper is not in it."""
    return "".join((TEMPLATES / name).read_text("utf-8") for name in ("chart.css", "sheet.css"))


@cache
def _environment() -> "Environment":
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    return Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def _chart_share(chart: str) -> float:
    """Height for width of the chart's wide form, the one that is printed."""
    found = search(r'class="reach wide"[^>]*viewBox="0 0 ([\d.]+) ([\d.]+)"', chart)
    return float(found.group(2)) / float(found.group(1)) if found else 0.0


def _fitted(sheet: Sheet, paper: str) -> Fit:
    closing = (USUAL, f"{ASK_FIRST if sheet.ask_first else ''} {NO_REVIEW}")
    paragraphs = (
        "Lifter and date",
        " ".join(sheet.facts),
        *sheet.because,
        *sheet.notes,
        f"Fetch: {sheet.fetch}",
        *sheet.after,
        *closing,
    )
    return fit_of(sheet.drills, Fixed(sheet.title, paragraphs, _chart_share(sheet.chart)), PAPERS[paper])


def _columns(drills: Sequence[Told], fit: Fit) -> list[Sequence[Told]]:
    return [column for column in (drills[: fit.left], drills[fit.left :]) if column]


def html(sheet: Sheet, paper: str = "a4") -> str:
    """A sheet as a whole HTML document for a phone, and for `paper` (a key of PAPERS) when printed.

    Its policy allows its own stylesheet and nothing else, so that whatever an entry holds stays text.
    """
    from markupsafe import Markup

    fit, size = _fitted(sheet, paper), PAPERS[paper]
    if sheet.lower_chart and (fit.size < SMALL or not fit.one_page):
        sheet = sheet._replace(chart=sheet.lower_chart)
        fit = _fitted(sheet, paper)
    if sheet.in_short and not fit.one_page:
        sheet = sheet._replace(because=sheet.in_short)
        fit = _fitted(sheet, paper)
    style = f"{stylesheet()}@page {{ size: {size.name}; margin: {size.end:g}mm {size.side:g}mm; }}\n"
    return (
        _environment()
        .get_template("sheet.html")
        .render(
            sheet=sheet,
            columns=_columns(sheet.drills, fit),
            fit=fit,
            chart=Markup(sheet.chart),  # noqa: S704  # made by ours, every text in it escaped
            style=Markup(style),  # noqa: S704  # a file of ours
            digest=b64encode(sha256(style.encode()).digest()).decode(),
            USUAL=USUAL,
            ASK_FIRST=ASK_FIRST,
            NO_REVIEW=NO_REVIEW,
        )
    )
