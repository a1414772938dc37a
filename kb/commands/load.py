"""`drillpath load DRILL`: what to put on the bar for one drill, and the discs for each side."""

import sqlite3
from collections.abc import Mapping
from typing import TypedDict

import click

from kb.ask import read
from kb.ask.names import resolve
from kb.commands.asked import Asked, as_json_option, complete, put_json, room_of, room_options, words
from kb.commands.load_asked import bests_of, iron_options, iron_there
from kb.commands.said import said_first
from kb.discs import Iron, Unit, at_most, exactly, kg_of, weight
from kb.errors import BadInput
from kb.loading import Loaded, loaded, weighed
from kb.terms import Drill, DrillId, Lift, LiftId, Load

__all__ = ["command"]


@click.command(name="load", short_help="What to put on the bar for a drill, disc by disc.")
@click.argument("drill", nargs=-1, required=True, shell_complete=complete("drill"))
@iron_options
@click.option(
    "--load",
    "at",
    type=click.Choice(("light", "working")),
    default="light",
    show_default=True,
    help="What it begins with, or the most it goes to.",
)
@click.option("--missed", metavar="WEIGHT", multiple=True, help="A weight missed today or last time: what goes now.")
@click.option("--total", metavar="WEIGHT", help="The discs for this weight, whatever the bests say.")
@room_options
@as_json_option
@said_first
@click.pass_context
def command(
    ctx: click.Context,
    drill: tuple[str, ...],
    best: tuple[str, ...],
    bar: str,
    units: Unit,
    discs: str | None,
    collars: bool,
    at: str,
    missed: tuple[str, ...],
    total: str | None,
    kit: str | None,
    have: str | None,
    as_json: bool,
) -> None:
    """What to put on the bar for a drill, from the lifter's bests, and the discs for each side.

    Weights are rounded down to what the discs can make. Without a best no kilograms are guessed.
    """
    from kb.show.load_text import Answer, load_json, load_text

    db = ctx.ensure_object(Asked).catalogue()
    drills, lifts, room = read.drills(db), read.lifts(db), room_of(db, kit, have)
    wanted = read.with_text(db, drills[DrillId(resolve(db, "drill", words(drill)))])
    if missed and total is not None:
        raise BadInput("--missed says what goes on, so it can't stand with --total")
    iron = iron_there(room.have, bar, units, discs, collars=collars)
    bests = bests_of(db, best, units, drills)
    found = weighed(wanted, bests, iron)
    if found.most is not None and "bar" not in room.have:
        found = found._replace(least=None, most=None, why="there is no bar: take a stick, or ask `swap`")
    answer = Answer(
        drill=wanted,
        found=found,
        iron=iron,
        at=Load[at.upper()],
        bests=bests,
        names={each.id: each.name for each in lifts.values()},
        floor=_from_the_floor(db, wanted, lifts),
        **({"given": loaded(exactly(weight(total, "the total"), iron), iron)} if total is not None else {}),
        **_after(missed, iron),
    )
    if as_json:
        put_json(load_json(answer))
        return
    from kb.show.setting import setting_of

    click.echo("\n".join(load_text(answer, setting_of())))


class _After(TypedDict, total=False):
    given: Loaded
    missed: tuple[float, ...]


def _after(missed: tuple[str, ...], iron: Iron) -> _After:
    """What goes on after misses, the least missed first; nothing without any, BadInput for what is no weight."""
    if not missed:
        return {}
    from kb.show.after_misses import OF_MISSED

    weights = sorted({weight(each, "what was missed") for each in missed})
    discs = at_most(OF_MISSED * weights[0], iron)
    if discs is None:
        raise BadInput(
            f"nine tenths of {weights[0]:g} {iron.unit} is less than the bar: take a lighter one, or a stick"
        )
    return {"given": loaded(discs, iron), "missed": tuple(kg_of(each, iron.unit) for each in weights)}


def _from_the_floor(db: sqlite3.Connection, drill: Drill, lifts: Mapping[LiftId, Lift]) -> bool:
    """Whether a drill begins where its lift does, with the bar on the floor."""
    return any(
        reach[0] == lifts[lift].points[0] and read.position(db, lifts[lift].timeline[0].position).bar == "floor"
        for lift, reach in drill.reach.items()
    )
