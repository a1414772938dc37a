"""`--screen FILE`: a fault's causes in the light of a lifter's measurements."""

import sqlite3
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

import click

from kb.ask import read
from kb.terms import Fault, Lift, PositionId

if TYPE_CHECKING:
    from kb.ask.by_screen import Verdict
    from kb.show.setting import Setting

__all__ = ["ByScreen", "by_screen_option", "judged"]

Command = TypeVar("Command", bound=Callable[..., Any])


class ByScreen(NamedTuple):
    """The causes in their new order, and the names of positions spoken of."""

    verdicts: "tuple[Verdict, ...]"
    names: dict[PositionId, str]

    @property
    def cause(self) -> str:
        """The cause to try first."""
        return self.verdicts[0].cause.id

    def as_json(self) -> dict[str, Any]:
        """What is added to an answer for programs."""
        from kb.show.by_screen_text import by_screen_json

        return {"screen": by_screen_json(self.verdicts, self.names)}

    def as_line(self) -> str:
        """The cause to try first, and why."""
        from kb.show.by_screen_text import by_screen_line

        return by_screen_line(self.verdicts, self.names)

    def as_text(self, setting: "Setting") -> list[str]:
        """What is added to an answer for people."""
        from kb.show.by_screen_text import by_screen_text

        return by_screen_text(self.verdicts, self.names, setting)


def by_screen_option(command: Command) -> Command:
    """Add `--screen`."""
    return click.option(
        "--screen",
        type=click.Path(),
        metavar="FILE",
        help="A lifter's measurements (`screen --save`): stiffness ruled in or out moves a cause up or down.",
    )(command)


def judged(db: sqlite3.Connection, fault: Fault, lift: Lift, file: str) -> ByScreen:
    """What the measurements in a file say of a fault's causes.

    Raises BadInput for a file that can't be read or understood.
    """
    from pathlib import Path

    from kb.ask.by_screen import by_screen
    from kb.body.tape import tape_of
    from kb.intake.screen_file import screen_file

    tape = tape_of(screen_file(Path(file)))
    positions = {timed.position: read.position(db, timed.position) for timed in lift.timeline}
    verdicts = by_screen(fault, lift, tape, positions=positions, drills=read.drills(db).values())
    return ByScreen(verdicts, {each.id: each.name for each in positions.values()})
