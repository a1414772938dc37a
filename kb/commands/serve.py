"""`drillpath serve`: the pages, served on this machine."""

import click

from kb.commands.asked import Asked, say

__all__ = ["command"]


@click.command(name="serve", short_help="The pages, served on this machine or to others in the room.")
@click.option("--host", default="127.0.0.1", show_default=True, help="0.0.0.0 lets phones in the room in.")
@click.option("--port", type=click.IntRange(1, 65535), default=8055, show_default=True)
@click.option("--open", "open_it", is_flag=True, help="Open the first page in a browser.")
@click.option("--sql", is_flag=True, help="Let whoever visits ask the catalogue in SQL, and take it away.")
@click.pass_context
def command(ctx: click.Context, host: str, port: int, open_it: bool, sql: bool) -> None:
    """The pages over the catalogue, and the catalogue as data beside them, until it is stopped with Ctrl-C.

    \b
    drillpath serve                  on this machine alone
    drillpath serve --host 0.0.0.0   for every phone in the hall
    """  # noqa: D301  # \b is click's mark for a paragraph that isn't to be filled
    from pathlib import Path

    from kb.serve.listening import addresses, listen

    asked = ctx.ensure_object(Asked)
    asked.catalogue().close()
    opened = listen(host, port)
    from kb.serve.app import served
    from kb.serve.running import run

    app = served(Path(asked.place.catalogue), sql=sql)
    mine, *others = addresses(host, port)
    say(f"drillpath at {mine} (Ctrl-C stops it)")
    for each in others:
        say(f"For others in the room: {each}")
    say(f"The tables it is made from: {mine}catalogue{' (anyone may ask in SQL)' if sql else ''}")
    if open_it:
        click.launch(mine)
    run(app, opened)
