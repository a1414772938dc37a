"""The text of entries as HTML: Markdown as entries use it, with raw HTML and foreign links inert."""

import re
from functools import cache
from typing import TYPE_CHECKING

from markupsafe import Markup

if TYPE_CHECKING:
    from markdown_it import MarkdownIt

__all__ = ["as_html"]


@cache
def _parser() -> "MarkdownIt":
    from markdown_it import MarkdownIt

    # no HTML from entries, no links that run something, no pictures from elsewhere
    return MarkdownIt("commonmark", {"html": False}).disable(["image", "html_block", "html_inline"])


_LINK = re.compile(r'<a href="([^"]*)"[^>]*>(.*?)</a>', re.DOTALL)


@cache
def as_html(text: str) -> Markup:
    """An entry's section as HTML; headings in it would be out of order, so they come as bold paragraphs."""
    made = _parser().render(text)
    made = re.sub(r"<h[1-6]>(.*?)</h[1-6]>", r"<p><strong>\1</strong></p>", made, flags=re.DOTALL)
    # addresses are shown, not followed: no page leads to another origin because an entry says so
    return Markup(_LINK.sub(_shown, made))  # noqa: S704  # escaped by the renderer


def _shown(link: re.Match[str]) -> str:
    address, words = link.groups()
    return words if words == address else f"{words} ({address})"
