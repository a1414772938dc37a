"""A session short enough to send to a lifter: what, how much, when to move on, and the caution."""

from kb.ask.session.records import Session
from kb.show.care import USUAL
from kb.show.session_words import clock, dose_words, standard_words, weight_words
from kb.show.setting import Setting

__all__ = ["message_text"]


def message_text(session: Session, setting: Setting) -> list[str]:
    """One line a drill, unwrapped; the standard only where there is something to move on from."""
    name = session.fault.name if session.fault is not None else session.lift.name
    which = f", {session.n} of {session.of}" if session.of > 1 else ""
    lines = [f"{name}: {session.minutes} min{which}"]
    for block in session.blocks:
        much = ", ".join(filter(None, (dose_words(block.drill, block.dose, setting), weight_words(block))))
        line = f"{clock(block.start_s)} {block.drill.name}: {much}."
        if block.part in ("chain", "lift"):
            line += f" On when {standard_words(block)}."
        lines.append(line.replace("\N{NO-BREAK SPACE}", " "))
    return [*lines, USUAL]
