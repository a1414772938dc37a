"""`drillpath diff A [B]`: what differs between two libraries, and which answers with it."""

from pathlib import Path

import click

from kb.commands.asked import Asked, as_json_option, put_json

__all__ = ["command"]


@click.command(name="diff", short_help="What a change of content does to the answers.")
@click.argument("before", metavar="A")
@click.argument("after", metavar="[B]", required=False)
@as_json_option
@click.pass_context
def command(ctx: click.Context, before: str, after: str | None, as_json: bool) -> None:
    """What differs from library A to library B: entries, what they say of one another, chains and paths.

    Each is a folder that holds drills/, or a revision (main~5, a tag) of the repository that the library in use lies
    in. Without B it is the library in use. Every default question is asked of both.
    """
    from kb.check.diff.diff import diff
    from kb.check.diff.revision import found_at
    from kb.make.library import load

    root = ctx.ensure_object(Asked).place.root
    with found_at(before, Path(root)) as a, found_at(after or root, Path(root)) as b:
        found = diff(load(a), load(b))
    names = before, after or "the library in use"
    if as_json:
        from kb.show.diff_json import diff_json

        put_json(diff_json(found, *names))
    else:
        from kb.show.diff_text import diff_text
        from kb.show.setting import setting_of

        click.echo("\n".join(diff_text(found, *names, setting_of())))
