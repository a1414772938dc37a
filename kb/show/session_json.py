"""A session for programs: the first at the top, and every one that belongs to it under `sessions`."""

from collections.abc import Sequence
from typing import Any

from kb.ask.session.records import Block, Session
from kb.plain import to_plain
from kb.terms import DrillId, Stage

__all__ = ["sessions_json"]

Json = dict[str, Any]


def sessions_json(sessions: Sequence[Session]) -> Json:
    """Sessions as one answer: the first session's keys at the top, all of them under `sessions`."""
    first = sessions[0]
    return {
        "version": 1,
        "lift": first.lift.id,
        "fault": first.fault.id if first.fault is not None else None,
        "cause": first.cause.id if first.cause is not None else None,
        **_session(first),
        "sessions": [_session(session) for session in sessions],
    }


def _session(session: Session) -> Json:
    return {
        "minutes": session.minutes,
        "n": session.n,
        "of": session.of,
        "spare_s": session.spare_s,
        "value": session.value,
        "optimal": session.optimal,
        "left_out": [{"id": each.drill.id, "why": each.why} for each in session.left_out],
        "blocks": [_block(block) for block in session.blocks],
    }


def _named(drill: DrillId | None) -> Json | None:
    return None if drill is None else {"id": drill}


def _block(block: Block) -> Json:
    drill, dose, bar = block.drill, block.dose, block.loaded
    return {
        "start_s": block.start_s,
        "seconds": block.seconds,
        "part": block.part,
        "drill": {"id": drill.id, "name": drill.name},
        "as": "work" if block.work else "check",
        "rounds": dose.rounds,
        "reps": dose.reps,
        "hold_s": dose.hold_s,
        "rest_s": dose.rest_s,
        "sides": dose.sides,
        "tempo": list(dose.tempo) if dose.tempo else None,
        "good": dose.good,
        "every_s": dose.every_s,
        "cut": block.cut,
        "how_heavy": None if drill.stage is Stage.PREPARE else block.load.word,
        "load": None if bar is None else {"kg": bar.kg, "bar_kg": bar.bar_kg, "discs_kg": list(bar.discs_kg)},
        "unloaded_first": block.unloaded_first,
        "loading_s": block.loading_s,
        "teach_s": block.teach_s,
        "gear": [{"item": gear.item, "using": gear.using} for gear in block.gear],
        "cue": next(iter(drill.cues), None),
        "standard": to_plain(drill.standard),
        "gone": block.gone,
        "if_not": _named(block.if_not),
        "if_early": _named(block.if_early),
    }
