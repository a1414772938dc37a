"""`drillpath import KIND FILE`: what a spreadsheet changes, taken into the library."""

from pathlib import Path

import click

from kb.commands.asked import Asked
from kb.commands.export import KINDS
from kb.errors import BadInput

__all__ = ["command"]

LARGEST = 20_000_000
"""Bytes of a spreadsheet at most: a hundred times what 2,000 drills need."""


@click.command(name="import", short_help="A spreadsheet taken into the library.")
@click.argument("kind", type=KINDS)
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@click.option("--dry-run", is_flag=True, help="Say what would change, and change nothing.")
@click.pass_context
def command(ctx: click.Context, kind: str, file: Path, dry_run: bool) -> None:
    """What a spreadsheet changes, taken into the library: all of it, or nothing if a cell is wrong.

    FILE is CSV with a header row, as `drillpath export` writes it. Entries without a row and fields without a
    column stay as they are; an empty cell takes its field away; a new id makes a new entry.
    """
    from kb.make.take_in import take_in

    place = ctx.ensure_object(Asked).place
    if place.shipped:
        raise BadInput("the library that came with the program isn't for writing in; name your own with --library")
    changed, problems = take_in(Path(place.root), kind, file.name, _text(file), write=not dry_run)  # type: ignore[arg-type]  # of KINDS
    for problem in problems:
        click.echo(f"{problem.file}:{problem.line}: {problem.code}: {problem.message} {problem.help}".rstrip())
    if problems:
        click.echo(f"nothing was written: {len(problems)} problem{'s' if len(problems) > 1 else ''}")
        ctx.exit(1)
    for name in changed:
        click.echo(name)
    click.echo(f"{len(changed)} {'would change' if dry_run else 'changed'}" if changed else "nothing to change")


def _text(file: Path) -> str:
    try:
        if file.stat().st_size > LARGEST:
            raise BadInput(f"{file} is larger than {LARGEST // 1_000_000} MB")
        return file.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise BadInput(f"{file} isn't UTF-8 text; save it as CSV UTF-8") from error
    except OSError as error:
        raise BadInput(f"{file} can't be read: {(error.strerror or str(error)).lower()}") from error
