"""`drillpath build`: the catalogue, the graphs and the generated documentation."""

from pathlib import Path

import click

from kb.commands.asked import Asked
from kb.errors import BadInput, BrokenLibrary

__all__ = ["command"]


@click.command(name="build", short_help="Make catalogue, graphs and generated documents.")
@click.option("--check", is_flag=True, help="Write nothing; exit 1 and name a committed file that is stale.")
@click.pass_context
def command(ctx: click.Context, check: bool) -> None:
    """Make the catalogue, the graphs and the generated documents; only what changed is done again."""
    from kb.produce import produce
    from kb.show.problems_text import problems_brief

    place = ctx.ensure_object(Asked).place
    if place.shipped:
        raise BadInput("the library that came with the program is built already; name your own with --library")
    root = Path(place.root)
    try:
        produced = produce(root, Path(place.catalogue).parent, check=check)
    except BrokenLibrary as broken:
        for line in problems_brief(broken.problems):
            click.echo(line, err=True)
        raise
    for path in produced.stale:
        name = path.relative_to(root).as_posix() if path.is_relative_to(root) else str(path)
        click.echo(f"{name} is stale: run `drillpath build`.", err=True)
    if not check:
        count = len(produced.changed)
        click.echo(f"{count} file{'s' * (count > 1)} written." if count else "Up to date.")
    ctx.exit(1 if produced.stale else 0)
