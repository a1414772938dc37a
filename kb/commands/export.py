"""`drillpath export KIND [FILE]`: a kind's entries as a spreadsheet."""

from pathlib import Path

import click

from kb.commands.asked import Asked

__all__ = ["KINDS", "command"]

KINDS = click.Choice(["drill", "fault", "position", "equipment", "lift"])


@click.command(name="export", short_help="Entries as a spreadsheet.")
@click.argument("kind", type=KINDS)
@click.argument("file", required=False, type=click.Path(dir_okay=False, path_type=Path))
@click.pass_context
def command(ctx: click.Context, kind: str, file: Path | None) -> None:
    """A kind's entries as a spreadsheet (CSV): one entry a row, one field of its front matter a column.

    Bodies stay in their files. FILE is written over; without one it goes to standard output. Change what you
    like, and take it in with `drillpath import`.
    """
    from kb.make.aside import put
    from kb.make.spreadsheet import spreadsheet

    text = spreadsheet(Path(ctx.ensure_object(Asked).place.root), kind)  # type: ignore[arg-type]  # of KINDS
    if file is None:
        click.echo(text, nl=False)
        return
    # the mark by which spreadsheet programs know that the text is UTF-8
    put(file, "\ufeff" + text)
    click.echo(f"{file}: {max(0, text.count(chr(13) + chr(10)) - 1)} rows")
