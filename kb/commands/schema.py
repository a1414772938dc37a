"""`drillpath schema`: what an entry may hold, for people or, of one kind, for editors."""

import click

__all__ = ["command"]

KINDS = ("lift", "position", "fault", "equipment", "drill")


@click.command(name="schema", short_help="What an entry may hold.")
@click.argument("kind", required=False, type=click.Choice(KINDS))
def command(kind: str | None) -> None:
    """What an entry may hold: every field, for people; of one KIND its JSON Schema, for editors."""
    from kb.make.schema import field_reference, json_schema

    if kind is None:
        click.echo(field_reference(), nl=False)
        return
    from json import dumps

    click.echo(dumps(json_schema(kind), indent=2))  # type: ignore[arg-type]  # click's choice lets no other word in
