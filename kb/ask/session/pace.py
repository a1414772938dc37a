"""A session beat by beat: what is said at which second, from doses and tempo, for a voice or a page's timer."""

from collections.abc import Iterator
from typing import NamedTuple

from kb.ask.session.records import Block, Session
from kb.ask.session.warm_up import QUICK_S
from kb.dose import CHANGE_OVER_S, Piece, pieces
from kb.terms import Drill, Speed, Stage

__all__ = ["Beat", "beats", "block_beats"]

PHASES = ("lower", "hold", "up", "settle")
"""Eccentric, pause, concentric, pause, as they are called."""

STRETCHES = ("in", "hold", "back", "rest")
"""The same of a drill that opens a joint."""

NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
"""Counts as they are called; above these in figures."""

WORTH_CALLING_S = 2
"""A tempo with no phase this long is left to the lifter, s."""


class Beat(NamedTuple):
    """What is said at a second of the session, and how long it lasts; `fresh` when a written line begins with it."""

    at_s: int
    seconds: int
    say: str
    fresh: bool = True


def count(number: int) -> str:
    """A number as it is called.

    >>> count(4), count(30)
    ('four', '30')
    """
    return NUMBERS[number] if number < len(NUMBERS) else str(number)


def beats(session: Session) -> tuple[Beat, ...]:
    """Every beat of a session; they follow each other without a gap from 0 to the end of its last block."""
    return tuple(beat for block in session.blocks for beat in block_beats(block))


def block_beats(block: Block) -> Iterator[Beat]:
    """A block's beats: changing over, showing, setting up, discs, then its dose; they fill it to the second."""
    at = block.start_s
    named = f"{block.drill.name}. Change over."
    before = (
        (CHANGE_OVER_S, named),
        (block.teach_s, "Watch it shown."),
        (block.loading_s, _loading(block)),
        (block.drill.set_up_s, "Set up."),
    )
    for seconds, say in before:
        if seconds:
            yield Beat(at, seconds, say)
            at += seconds
    rounds = max(piece.round for piece in pieces(block.dose)) if pieces(block.dose) else 0
    for piece in pieces(block.dose):
        for beat in _piece(block.drill, piece, rounds, block.dose.sides, block.dose.tempo):
            yield beat._replace(at_s=at)
            at += beat.seconds


def _loading(block: Block) -> str:
    if block.loaded is None:
        return "Put the discs on."
    if not block.loaded.discs_kg:
        return "Strip the bar."
    discs = " and ".join(f"{disc:g}" for disc in block.loaded.discs_kg)
    return f"Load {block.loaded.kg:g} kilos: {discs} a side."


def _piece(
    drill: Drill, piece: Piece, rounds: int, sides: int, tempo: tuple[int, int, int, int] | None
) -> Iterator[Beat]:
    """One side's repetitions and hold, or a rest; starts are filled in by the caller."""
    if piece.kind == "rest":
        yield Beat(0, piece.seconds, f"Rest {count(piece.seconds)}.")
        return
    name = f"Round {count(piece.round)}" if rounds > 1 else "Begin"
    side = ("", " left", " right")[piece.side] if sides == 2 else ""
    lead = f"{name}{',' if side else ''}{side}. "
    rep_s = (piece.seconds - piece.hold_s) // piece.reps if piece.reps else 0
    if piece.reps and rep_s <= QUICK_S:
        yield Beat(0, piece.reps * rep_s, f"{lead}{count(piece.reps).capitalize()}, in your own time.")
        lead = ""
    for rep in range(1, piece.reps + 1 if rep_s > QUICK_S else 0):
        called = lead if rep == 1 else f"{count(rep).capitalize()}. "
        yield from _repetition(drill, rep_s, tempo, called)
        lead = ""
    if piece.hold_s:
        yield Beat(0, piece.hold_s, f"{lead}Hold for {count(piece.hold_s)}.", fresh=not piece.reps)


def _repetition(drill: Drill, seconds: int, tempo: tuple[int, int, int, int] | None, called: str) -> Iterator[Beat]:
    """One repetition: phase by phase where the tempo is part of the drill, else in one beat."""
    if tempo is None or drill.speed is Speed.FULL or max(tempo) < WORTH_CALLING_S:
        yield Beat(0, seconds, called.strip())  # the lift's own speed isn't called
        return
    words = STRETCHES if drill.stage is Stage.PREPARE else PHASES
    fresh = True
    for word, length in zip(words, tempo, strict=True):
        if length:
            said = f"{word.capitalize()} for {count(length)}." if length > 1 else f"{word.capitalize()}."
            yield Beat(0, length, f"{called}{said}" if fresh else said, fresh)
            fresh = False
