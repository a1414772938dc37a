"""`--best` and `--bar`, for every question that reckons kilograms; nothing else is imported for them."""

from collections.abc import Callable
from typing import Any, TypeVar

import click

__all__ = ["best_options"]

Command = TypeVar("Command", bound=Callable[..., Any])


def best_options(command: Command) -> Command:
    """Add `--best` and `--bar`."""
    for option in (
        click.option(
            "--bar", default="men", show_default=True, metavar="BAR", help="men, women or training; or its weight."
        ),
        click.option(
            "--best",
            multiple=True,
            metavar="OF=WEIGHT",
            help="The lifter's best: clean=80. Of a squat, press or pull also a set: front-squat=80x5.",
        ),
    ):
        command = option(command)
    return command
