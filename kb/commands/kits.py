"""`drillpath kits`: the named kits, and how far each goes."""

import click

from kb.commands.asked import Asked, as_json_option, put_json

__all__ = ["command"]


@click.command(name="kits", short_help="The named kits, and how far each goes.")
@as_json_option
@click.pass_context
def command(ctx: click.Context, as_json: bool) -> None:
    """The named kits: what is in each, the drills it allows, the faults that one of these works on."""
    from kb.ask import read
    from kb.kit import fit

    db = ctx.ensure_object(Asked).catalogue()
    drills, items = read.drills(db), read.items(db)
    kits = {}
    for kit, held in read.kits(db).items():
        doable = [drill for drill in drills.values() if fit(drill, held, items) is not None]
        kits[kit] = (held, len(doable), len({said.fault for drill in doable for said in drill.faults}))
    if as_json:
        from kb.show.as_json import kits_json

        put_json(kits_json(kits))
    else:
        from kb.show.setting import setting_of
        from kb.show.swap_text import kits_text

        click.echo("\n".join(kits_text(kits, items, setting_of())))
