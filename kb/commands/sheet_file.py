"""`--sheet FILE.html`: an answer as a page for a phone and for paper, written whole or not at all."""

import sqlite3
from collections.abc import Callable
from typing import Any, TypeVar

import click

from kb.ask import read
from kb.errors import BadInput
from kb.terms import Lift, PositionId

__all__ = ["PAPERS", "figures_of", "paper_of", "put_sheet", "put_text", "sheet_options"]

Command = TypeVar("Command", bound=Callable[..., Any])

PAPERS = ("a4", "letter")
"""The papers that a sheet fits (kb/show/sheet/fit.py), here so that no other answer imports it."""

ENDINGS = (".html", ".htm")


def sheet_options(command: Command) -> Command:
    """Add `--sheet` and `--paper`."""
    paper = click.option("--paper", type=click.Choice(PAPERS), help="What the sheet prints on; a4 if nothing is said.")
    sheet = click.option("--sheet", metavar="FILE.html", help="Write a page for a phone and for paper.")
    return sheet(paper(command))


def paper_of(sheet: str | None, paper: str | None) -> str:
    """The paper asked for. Raises BadInput for a paper without a sheet, or a sheet that isn't named as a page."""
    if sheet is None:
        if paper is not None:
            raise BadInput("--paper says what a sheet prints on, so it needs --sheet FILE.html")
    elif not sheet.lower().endswith(ENDINGS):
        raise BadInput(f"--sheet {sheet} must end in .html, so that a phone and a printer know it for a page")
    return paper or PAPERS[0]


def figures_of(db: sqlite3.Connection, lift: Lift) -> dict[PositionId, str]:
    """The picture of each position on a lift's timeline."""
    from kb.show.figure.drawing import figure_svg

    return {timed.position: figure_svg(read.position(db, timed.position)) for timed in lift.timeline}


def put_sheet(path: str, text: str) -> None:
    """Write a sheet aside, then rename it. Raises BadInput, with the reason, where it can't be written."""
    put_text(path, text, "the sheet", newline="\n")


def put_text(path: str, text: str, what: str, *, newline: str) -> None:
    """Write what was asked for whole or not at all; BadInput, with the reason, where it can't be written.

    `what` names it in that sentence; `newline` is as for `open`: "" leaves the text's own line ends.
    """
    from pathlib import Path

    from kb.make.aside import aside

    target = Path(path)
    try:
        if target.is_dir():
            raise IsADirectoryError(0, "it is a folder")
        if not target.parent.is_dir():
            raise FileNotFoundError(0, f"there is no folder {target.parent}")
        with aside(target) as beside:
            beside.write_text(text, "utf-8", newline=newline)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise BadInput(f"{what} can't be written to {path}: {reason.lower()}") from None
