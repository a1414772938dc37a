"""`drillpath place LIFT`: a few checks, the most telling first, and what a lifter holds."""

from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

import click

from kb.ask import read
from kb.ask.ability.fringe import Fringe, fringe
from kb.ask.ability.placement import Answer, Check, Placement, Says, checks_of, place
from kb.ask.ability.structure import Structure, structure
from kb.ask.names import resolve
from kb.commands.asked import Asked, Room, as_json_option, complete, put_json, room_of, room_options, words
from kb.errors import BadInput
from kb.show.setting import Setting
from kb.terms import Drill, DrillId, Item, ItemId, Lift, LiftId

__all__ = ["command"]

SAID: Mapping[str, Says] = {"y": "yes", "yes": "yes", "n": "no", "no": "no", "s": "skip", "skip": "skip"}
STOPS = ("q", "quit", "stop")
MOST_CHECKS = 100
"""The largest budget: nobody does more in a day."""


class _Asking(NamedTuple):
    """What stays the same from check to check."""

    lift: Lift
    lifts: Mapping[LiftId, Lift]
    drills: Mapping[DrillId, Drill]
    items: Mapping[ItemId, Item]
    room: Room
    structure: Structure
    checks: Mapping[DrillId, Check]
    budget: int | None

    def placed(self, answers: tuple[Answer, ...]) -> Placement:
        """Where some answers lead."""
        return place(self.lift, self.structure, self.checks, answers, budget=self.budget)

    def fringe(self, placement: Placement) -> Fringe:
        """What is ready after a placement."""
        return fringe(self.drills, placement.holds, [self.lift], have=self.room.have, items=self.items)


@click.command(name="place", short_help="A few checks, and what a lifter holds and is ready for.")
@click.argument("lift", nargs=-1, required=True, shell_complete=complete("lift"))
@room_options
@click.option(
    "--budget",
    type=click.IntRange(1, MOST_CHECKS),
    help="Checks at most; else 1.5 times the binary logarithm of what there is to tell apart, and one.",
)
@click.option("--answers", metavar="FILE", type=click.Path(path_type=Path), help="Answers already given.")
@click.option(
    "--save", metavar="FILE", type=click.Path(path_type=Path), help="Keep the answers here, and go on from them."
)
@as_json_option
@click.pass_context
def command(
    ctx: click.Context,
    lift: tuple[str, ...],
    kit: str | None,
    have: str | None,
    budget: int | None,
    answers: Path | None,
    save: Path | None,
    as_json: bool,
) -> None:
    """A few checks, one at a time and the most telling first, and then what a lifter holds and is ready for.

    Nothing with a bar, or overhead in a deep position, is asked before what it is built on was shown.
    """
    from kb.show.setting import setting_of

    db = ctx.ensure_object(Asked).catalogue()
    lift_id = LiftId(resolve(db, "lift", words(lift)))
    lifts, drills, items, room = read.lifts(db), read.drills(db), read.items(db), room_of(db, kit, have)
    given = _given(answers, save, lifts[lift_id])
    checks = checks_of(lifts[lift_id], drills, room.have, items, answered={answer.id for answer in given})
    states = structure({drill.id: drill.groups for drill in drills.values()}, tuple(checks))
    asking = _Asking(lifts[lift_id], lifts, drills, items, room, states, checks, budget)
    placement = asking.placed(given)
    if as_json:
        from kb.show.place_json import place_json

        put_json(place_json(placement, asking.fringe(placement), room.kit))
        return
    setting = setting_of()
    placement = _asked(asking, placement, {each: read.with_text(db, drills[each]) for each in checks}, save, setting)
    from kb.show.place_text import ending

    found = asking.fringe(placement)
    said = ending(
        placement,
        found,
        _way_on(ctx, lift_id, kit, have, found),
        drills=drills,
        lifts=lifts,
        have=room.have,
        items=items,
        setting=setting,
    )
    click.echo("\n".join(["", *said]))


def _given(answers: Path | None, save: Path | None, lift: Lift) -> tuple[Answer, ...]:
    """The answers in `--answers`, or in `--save` where it is there already."""
    if answers is not None and save is not None and save.exists():
        raise BadInput(f"{save} is there already and is gone on from, so --answers can't stand beside it")
    source = answers or (save if save is not None and save.exists() else None)
    if source is None:
        return ()
    from kb.intake.answers_file import read_answers

    return read_answers(source, lift.checkpoints, lift.name.lower())


def _asked(
    asking: _Asking, placement: Placement, texts: Mapping[DrillId, Drill], save: Path | None, setting: Setting
) -> Placement:
    """The placement after whatever is answered on the terminal, to its end or until it is stopped."""
    if placement.next is None:
        return placement
    from kb.show.place_text import check_lines, opening

    click.echo("\n".join(opening(placement, asking.room.kit, setting)))
    seen: set[str] = set()
    while placement.next is not None:
        check = placement.next._replace(drill=texts[placement.next.drill.id])
        said = check_lines(
            check,
            placement.asked + 1,
            placement,
            have=asking.room.have,
            items=asking.items,
            seen=seen,
            setting=setting,
        )
        click.echo("\n".join(["", *said]))
        says = _says()
        if says is None:
            break
        placement = asking.placed((*placement.answers, Answer(check.drill.id, says)))
        if save is not None:
            from kb.intake.answers_file import write_answers

            write_answers(save, placement.answers)
    return placement


def _says() -> Says | None:
    """What is answered; None to stop, also at the end of input and on Ctrl-C."""
    from kb.show.place_text import ANSWERS

    while True:
        try:
            said = click.prompt("    Met?", prompt_suffix=" ", default="", show_default=False).strip().lower()
        except click.Abort:
            click.echo()
            return None
        if said in STOPS:
            return None
        if said in SAID:
            return SAID[said]
        click.echo(f"    Answer {ANSWERS}.")


def _way_on(ctx: click.Context, lift: LiftId, kit: str | None, have: str | None, found: Fringe) -> str:
    """The command for the path from here, ready to paste."""
    from shlex import join

    library = ctx.parent.params.get("library") if ctx.parent else None
    typed = ["drillpath", *(["--library", library] if library else []), "path", lift]
    typed += ["--holds", ",".join(sorted(found.closed.held))] if found.closed.held else []
    typed += ["--kit", kit] if kit else []
    return join([*typed, "--have", have] if have is not None else typed)
