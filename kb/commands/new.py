"""`drillpath new drill NAME`: an entry to fill in."""

from pathlib import Path

import click

from kb.commands.asked import Asked, words
from kb.errors import BadInput

__all__ = ["command"]


@click.group(name="new", short_help="A new entry to fill in.")
def command() -> None:
    """A new entry to fill in."""


@command.command(name="drill")
@click.argument("name", nargs=-1, required=True)
@click.option("--family", help="The folder it goes to; told from the name if nothing is said.")
@click.pass_context
def drill(ctx: click.Context, name: tuple[str, ...], family: str | None) -> None:
    """A drill's entry to fill in, in drills/FAMILY/; never over one that is there."""
    from kb.make.new import FAMILIES, new_drill

    place = ctx.ensure_object(Asked).place
    if place.shipped:
        raise BadInput("the library that came with the program isn't for writing in; name your own with --library")
    if family is not None and family not in FAMILIES:
        raise BadInput(f"there is no family {family!r}", nearest=FAMILIES)
    path = new_drill(Path(place.root), words(name), family)
    click.echo(f"{path}\nFill it in, then: drillpath check")
