"""An entry's body taken apart into its sections, each kept as the Markdown that was written.

Only level-2 headings with fixed names divide it. Raw HTML and links that lead anywhere but to http(s)
are refused here, so that nothing further on has to think about them.
"""

import re
from collections.abc import Iterator
from functools import cache
from typing import TYPE_CHECKING

from kb.errors import Problem
from kb.make.files import Kind, nearest

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.token import Token

__all__ = ["SECTIONS", "take_sections"]

SECTIONS: dict[Kind, tuple[str, ...]] = {
    "lift": ("What it is", "Done when", "Sources"),
    "position": ("Feel", "Look for", "Sources"),
    "fault": ("Looks like", "Look first", "Mistaken for", "Not this way", "Heard", "Sources"),
    "equipment": ("Use", "Sources"),
    "drill": ("Set up", "Do", "Look for", "Say", "Slips", "Miss", "Why", "Sources"),
}
"""The headings that an entry of each kind may have, in the order they are usually written."""

_DEEPEST = 12
"""Lists and quotes inside one another; past 20 the Markdown parser drops text unsaid."""

_OUTSIDE = re.compile(r"https?://[^\s]+", re.IGNORECASE)


@cache
def _parser() -> "MarkdownIt":
    from markdown_it import MarkdownIt

    parser = MarkdownIt("commonmark")
    # a link that the parser finds unsafe would become text and go unseen; here each is seen and judged
    parser.validateLink = lambda url: bool(url)  # type: ignore[method-assign]
    return parser


def take_sections(
    file: str, kind: Kind, body: str, first_line: int
) -> tuple[dict[str, str], dict[str, int], list[Problem]]:
    """Sections by heading, the line of each heading ("## Say"), and what is wrong with the body."""
    tokens = _parser().parse(body)
    problems = [
        Problem(file=file, line=first_line + line, code=code, message=message, help=help_)
        for line, code, message, help_ in _faults_of(tokens)
    ]
    text = body.split("\n")
    sections: dict[str, str] = {}
    lines: dict[str, int] = {}
    starts = list(_headings(tokens))
    before = "\n".join(text[: starts[0][0]] if starts else text)
    if before.strip():
        line = first_line + next(n for n, written in enumerate(text) if written.strip())
        message = "There is text before the first heading."
        problems.append(_problem(file, line, "text-before-heading", message, f"Begin with `## {SECTIONS[kind][0]}`."))
    for here, (start, after, level, name) in enumerate(starts):
        end = starts[here + 1][0] if here + 1 < len(starts) else len(text)
        line = first_line + start
        if level != 2 or name not in SECTIONS[kind]:
            problems.append(_unknown(file, line, kind, name))
        elif name in sections:
            problems.append(_problem(file, line, "repeated-heading", f"`## {name}` stands here a second time."))
        else:
            sections[name] = "\n".join(text[after:end]).strip()
            lines[f"## {name}"] = line
    return sections, lines, problems


def _headings(tokens: "list[Token]") -> "Iterator[tuple[int, int, int, str]]":
    """Each heading: its first line, the line after it, its level (0 inside a list or quote) and its text."""
    for n, token in enumerate(tokens):
        if token.type == "heading_open" and token.map:
            level = int(token.tag[1:]) if token.level == 0 else 0
            yield token.map[0], token.map[1], level, tokens[n + 1].content


def _unknown(file: str, line: int, kind: Kind, name: str) -> Problem:
    known = SECTIONS[kind]
    called = "equipment" if kind == "equipment" else f"a {kind}"
    if name in known:
        message = f"`{name}` must be a heading of level 2, at the start of its line."
        return _problem(file, line, "unknown-heading", message, f"Write `## {name}`.")
    help_ = nearest(name, known) or f"The headings are {', '.join(known)}."
    return _problem(file, line, "unknown-heading", f"`{name}` is no heading of {called}.", help_)


def _faults_of(tokens: "list[Token]") -> "Iterator[tuple[int, str, str, str]]":
    for token in tokens:
        line = token.map[0] if token.map else 0
        if token.type == "html_block":
            yield line, "raw-html", "Raw HTML isn't taken.", "Say it in Markdown."
        if token.level > _DEEPEST and token.nesting == 1:
            yield line, "too-deep", f"Lists and quotes are nested more than {_DEEPEST} deep.", "Make it flat."
            return
        for child in token.children or ():
            line += child.type in ("softbreak", "hardbreak")
            if child.type == "html_inline":
                yield line, "raw-html", f"Raw HTML isn't taken: `{child.content}`.", "Say it in Markdown."
            address = child.attrGet("href") if child.type == "link_open" else child.attrGet("src")
            if address is not None and not _OUTSIDE.fullmatch(str(address)):
                yield line, "bad-link", f"`{address}` isn't an http or https address.", "Say it in words."


def _problem(file: str, line: int, code: str, message: str, help_: str = "") -> Problem:
    return Problem(file=file, line=line, code=code, message=message, help=help_)
