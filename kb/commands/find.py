"""`drillpath find TEXT`: faults, then drills, from a coach's own words."""

import click

from kb.commands.asked import Asked, as_json_option, put_json, words
from kb.commands.said import cleared_option
from kb.terms import LiftId

__all__ = ["command"]


@click.command(name="find", short_help="What a coach saw, in any words: faults, then drills.")
@click.argument("text", nargs=-1, required=True)
@click.option("--lift", metavar="LIFT", help="Only what this lift has.")
@cleared_option
@as_json_option
@click.pass_context
def command(ctx: click.Context, text: tuple[str, ...], lift: str | None, cleared: bool, as_json: bool) -> None:
    """Faults, then drills, from a coach's own words: spelling, order and other names are allowed for."""
    from kb.ask.find import find
    from kb.ask.names import resolve

    db = ctx.ensure_object(Asked).catalogue()
    findings = find(db, words(text), lift=LiftId(resolve(db, "lift", lift)) if lift else None, cleared=cleared)
    if as_json:
        from kb.show.as_json import find_json

        put_json(find_json(findings))
    else:
        from kb.ask.read import sections
        from kb.show.find_text import find_text
        from kb.show.setting import setting_of

        ids = [hit.id for hit in findings.faults[:1]]
        first = sections(db, "fault", ids).get(ids[0], {}) if ids else {}
        click.echo("\n".join(find_text(findings, setting_of(), first=first)))
