"""What a question for a session says, understood: the fault, path or drills, the room, and the minutes."""

import sqlite3
from typing import NamedTuple

import click

from kb.ask import read
from kb.ask.ability.standing import standing
from kb.ask.names import resolve, resolve_all
from kb.ask.session.records import Session
from kb.ask.session.sessions import MOST_MINUTES, fault_sessions, named_session, path_sessions
from kb.ask.session.tasks import Weigh
from kb.commands.asked import Room, drills_named, say
from kb.commands.by_screen_asked import judged
from kb.commands.fault_meant import cause_meant, fault_meant, lift_meant
from kb.commands.load_asked import bests_of
from kb.discs import Unit, iron_of
from kb.errors import BadInput
from kb.loading import Loaded, load_of
from kb.terms import Drill, DrillId, ItemId, LiftId, Load

__all__ = ["Typed", "minutes_of", "sessions_of", "with_texts"]


class Typed(NamedTuple):
    """The options of a question for a session, as they were typed."""

    fault: str | None
    path_to: str | None
    drills: str | None
    lift: str | None
    cause: str | None
    minutes: str
    kit: str | None
    have: str | None
    load: str | None
    holds: str | None
    teach: bool
    best: tuple[str, ...]
    bar: str
    units: Unit
    discs: str | None
    collars: bool
    screen: str | None = None


def minutes_of(text: str) -> int:
    """The minutes typed; BadInput for anything but a whole number in range."""
    typed = text.strip()
    minutes = int(typed) if typed.isascii() and typed.isdigit() and len(typed) < len(str(MOST_MINUTES)) + 1 else 0
    if not 1 <= minutes <= MOST_MINUTES:
        raise BadInput(f"--minutes takes a whole number from 1 to {MOST_MINUTES}, not {text!r}")
    return minutes


def sessions_of(ctx: click.Context, db: sqlite3.Connection, typed: Typed, room: Room) -> tuple[Session, ...]:
    """The sessions asked for.

    Raises BadInput for a question that can't be understood, NoAnswer (with the least minutes where it is time that
    is short) when there is none.
    """
    minutes = minutes_of(typed.minutes)
    named = [each for each in (typed.fault, typed.path_to, typed.drills) if each is not None]
    if len(named) != 1:
        raise BadInput("name one of --fault, --path and --drills: what the session is for")
    _only_with_a_fault(typed)
    weigh = _weigh(db, typed, room)
    if typed.path_to is not None:
        return _along(db, typed, room, minutes, weigh)
    if typed.drills is not None:
        return _own(db, typed, room, minutes, weigh)
    return _for_fault(ctx, db, typed, room, minutes, weigh)


def _only_with_a_fault(typed: Typed) -> None:
    if typed.fault is None and typed.screen is not None:
        raise BadInput("--screen goes with --fault: measurements choose among a fault's causes")
    if typed.fault is None and (typed.cause is not None or typed.load is not None):
        raise BadInput(
            "--cause and --load go with --fault: a path and your own drills have no cause, and say how heavy"
        )
    if typed.path_to is not None and typed.lift is not None:
        raise BadInput("--path names the lift already; leave out --lift")
    if typed.drills is not None and typed.holds is not None:
        raise BadInput("--drills are taken as they are, so nothing is in doubt; leave out --holds")


def _weigh(db: sqlite3.Connection, typed: Typed, room: Room) -> Weigh:
    """What goes on the bar by the bests typed; without one nothing is known of it."""
    iron = iron_of(typed.bar, typed.units, typed.discs, collars=typed.collars)
    if ItemId("discs") not in room.have:
        iron = iron._replace(discs=())
    bests = bests_of(db, typed.best, typed.units)

    def weigh(drill: Drill, load: Load) -> Loaded | None:
        return load_of(drill, bests, iron, at=load) if bests else None

    return weigh


def _for_fault(
    ctx: click.Context, db: sqlite3.Connection, typed: Typed, room: Room, minutes: int, weigh: Weigh
) -> tuple[Session, ...]:
    from kb.ask.matter import matter_of
    from kb.ask.question import ChainQuestion

    named_lift = LiftId(resolve(db, "lift", typed.lift)) if typed.lift else None
    fault_id = fault_meant(ctx, db, typed.fault or "", named_lift)
    shelf = read.shelf(db, lift_meant(ctx, db, fault_id, named_lift))
    cause = cause_meant(shelf.faults[fault_id], typed.cause) if fault_id in shelf.faults else typed.cause
    if typed.screen is not None and cause is None and fault_id in shelf.faults:
        seen = judged(db, shelf.faults[fault_id], shelf.lift, typed.screen)
        cause = seen.cause
        say(seen.as_line())
    question = ChainQuestion(
        fault=fault_id,
        have=room.have,
        cause=cause,
        load=Load[typed.load.upper()] if typed.load else None,
        holds=drills_named(db, typed.holds),
    )
    return fault_sessions(matter_of(shelf, question), minutes, weigh=weigh, teach=typed.teach)


def _along(db: sqlite3.Connection, typed: Typed, room: Room, minutes: int, weigh: Weigh) -> tuple[Session, ...]:
    from kb.ask.path import path

    shelf = read.shelf(db, LiftId(resolve(db, "lift", typed.path_to or "")))
    holds = standing(shelf, drills_named(db, typed.holds))
    found = path(shelf, have=room.have, holds=holds, order="either")
    return path_sessions(found, room.have, holds, minutes, weigh=weigh, teach=typed.teach)


def _own(db: sqlite3.Connection, typed: Typed, room: Room, minutes: int, weigh: Weigh) -> tuple[Session, ...]:
    from kb.ask.session.path_course import named_course

    if typed.lift is None:
        raise BadInput("--drills needs --lift: the lift that they lead to")
    names = [DrillId(each) for each in resolve_all(db, "drill", (typed.drills or "").split(","))]
    if not names:
        raise BadInput("--drills lists no drill")
    course = named_course(read.shelf(db, LiftId(resolve(db, "lift", typed.lift))), names, room.have)
    return named_session(course, minutes, weigh=weigh, teach=typed.teach)


def with_texts(db: sqlite3.Connection, sessions: tuple[Session, ...]) -> tuple[Session, ...]:
    """Sessions whose drills have their text: what to say is in it."""
    texts = read.sections(db, "drill", {block.drill.id for session in sessions for block in session.blocks})
    return tuple(
        session._replace(
            blocks=tuple(
                block._replace(drill=block.drill._replace(sections=texts.get(block.drill.id, {})))
                for block in session.blocks
            )
        )
        for session in sessions
    )
