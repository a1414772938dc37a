"""The pace of a session in writing: a line for each round and repetition, with the minute and second it begins."""

from kb.ask.session.pace import block_beats
from kb.ask.session.records import Session
from kb.show.session_words import clock
from kb.show.setting import Setting, hanging

__all__ = ["pace_text"]


def pace_text(session: Session, setting: Setting) -> list[str]:
    """What to say, and when; beats that belong together stand on one line."""
    lines: list[str] = []
    for block in session.blocks:
        lines.append("")
        spoken: list[tuple[int, str]] = []
        for beat in block_beats(block):
            if beat.fresh:
                spoken.append((beat.at_s, beat.say))
            else:
                at, said = spoken[-1]
                spoken[-1] = (at, f"{said} {beat.say}")
        for at, said in spoken:
            lines += hanging(f"{clock(at):>6}  ", said, setting)
    return lines[1:]
