"""`drillpath site FOLDER`: every page as a file, to carry on a stick or put on any server."""

from pathlib import Path

import click

from kb.commands.asked import Asked

__all__ = ["command"]


@click.command(name="site", short_help="Every page as a file, for a memory stick or a phone with no signal.")
@click.argument("folder", type=click.Path(path_type=Path, file_okay=False))
@click.pass_context
def command(ctx: click.Context, folder: Path) -> None:
    """Every page as a file in FOLDER, which opens without a server, or can be put on any."""
    from kb.intake.class_file import demo_class
    from kb.show.page.site import write_site

    db = ctx.ensure_object(Asked).catalogue()
    written = write_site(db, folder, demo_class(db))
    click.echo(
        f"{written.pages} pages ({written.chains} chains), {written.size / 1e6:.1f} MB: open {folder / 'index.html'}"
    )
