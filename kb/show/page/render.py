"""A page as HTML: the one renderer, for what is served and for files."""

from functools import cache
from typing import TYPE_CHECKING

from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL
from kb.show.coach_words import duration, human, listed
from kb.show.page.address import Form
from kb.show.page.markup import as_html
from kb.show.page.page import Page

if TYPE_CHECKING:
    from jinja2 import Environment

__all__ = ["html"]


@cache
def _environment() -> "Environment":
    from jinja2 import Environment, PackageLoader, StrictUndefined

    made = Environment(
        loader=PackageLoader("kb.show.page"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.filters.update(human=human, listed=listed, duration=duration, markdown=as_html)
    made.globals.update(USUAL=USUAL, ASK_FIRST=ASK_FIRST, NO_REVIEW=NO_REVIEW)
    return made


def html(page: Page, form: Form) -> str:
    """A page, set by its template; `form` says how it reaches the others."""
    template = _environment().get_template(page.template + ".html")
    return template.render(page=page, it=page.holds, form=form, to=form.to, file=form.file)
