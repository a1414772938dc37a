"""A session on a terminal: the chart on top, then a running sheet for the floor, then what was left out and why."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from kb.ask.session.records import Block, Session
from kb.dials import changes, spans
from kb.dose import minutes
from kb.show.bars import Bar, bands_of
from kb.show.care import Due, begun, cares
from kb.show.chain_text import closing
from kb.show.chart import chart
from kb.show.coach_words import duration, human, largest_change, listed, throughout_said
from kb.show.entry_lines import gear_said
from kb.show.session_words import PARTS, clock, dose_words, if_not_words, is_check, standard_words, weight_words
from kb.show.setting import Setting, aside, hanging, labelled, titled, wrapped
from kb.terms import Drill, DrillId, Item, ItemId, Load, Stage

__all__ = ["Where", "session_bars", "session_text", "sessions_text"]

INDENT, LABEL = 7, 9
"""Columns before a block's lines, and of the word that each begins with."""

UNLOADED = "Nothing goes on the bar before the form without a weight met the standard."
"""Said once, before the first drill with discs that may be done without."""


class Where(NamedTuple):
    """The room and the library, as far as words need them; `kit` is None where what there is was listed."""

    kit: str | None
    have: frozenset[ItemId]
    items: Mapping[ItemId, Item]
    drills: Mapping[DrillId, Drill]


def session_bars(session: Session) -> tuple[Bar, ...]:
    """The bars of a session's chart: its drills and the lift."""
    lift, found = session.lift, []
    before: Block | None = None
    for block in session.blocks:
        if block.part not in ("chain", "lift"):
            continue
        drill, prepares = block.drill, block.drill.stage is Stage.PREPARE
        turned = changes(before.dials, block.dials, lift.points, spans(lift)) if before is not None else ()
        opens = f"opens {listed([human(each) for each in drill.opens])}"
        said = opens if prepares else largest_change(turned, lift, drill)
        found.append(Bar(drill.name, block.seconds, None if prepares else block.dials, said, block.work))
        before = block
    return tuple(found)


def sessions_text(sessions: Sequence[Session], which: int, where: Where, setting: Setting) -> list[str]:
    """The session asked for (counted from 1), and in a line each the others that belong to it."""
    lines = session_text(sessions[which - 1], where, setting)
    others = [
        line
        for session in sessions
        if session.n != which
        for line in hanging(f"{session.n:>2}  ", _in_short(session), setting, indent=INDENT - 4)
    ]
    title = f"{len(sessions)} sessions in all; --session 2 shows the second"
    return [*lines, *titled(title, others, setting), *_closing(sessions, setting)]


def _in_short(session: Session) -> str:
    names = [block.drill.name for block in session.blocks if block.part in ("chain", "lift")]
    return f"{listed(names)} ({minutes(60 * session.minutes - session.spare_s)} min)"


def _closing(sessions: Sequence[Session], setting: Setting) -> list[str]:
    blocks = [block for session in sessions for block in session.blocks]
    heavy = any(
        block.load is Load.WORKING or block.drill.not_for or "breath" in block.drill.cautions for block in blocks
    )
    return closing(setting, ask_first=heavy)


def session_text(session: Session, where: Where, setting: Setting) -> list[str]:
    """One session: title, chart, running sheet, what was left out; the cautions that belong to all are the caller's."""
    lines = [*_title(session, where, setting), "", *_chart(session, setting)]
    gear = {(each.item, each.using): each for block in session.blocks for each in block.gear}
    fetched = gear_said(gear.values(), where.have, where.items)
    lines += ["", *hanging("Fetch  ", fetched, setting)] if fetched else []
    seen = begun(gear for block in session.blocks for gear in block.gear)
    part = ""
    for block, after in zip(session.blocks, (*session.blocks[1:], None), strict=True):
        if block.part != part:
            part = block.part
            lines += ["", setting.strong(PARTS[part])]
        lines += _block_lines(block, after, seen, where, setting)
    lines += ["", *wrapped(_ends(session), setting.width)]
    left = [line for each in session.left_out for line in hanging("  - ", f"{each.drill.name}: {each.why}", setting)]
    return [*lines, *titled("Left out", left, setting)]


def _title(session: Session, where: Where, setting: Setting) -> list[str]:
    facts = [session.lift.name.lower()] if session.fault is not None else []
    facts += [f"{where.kit} kit" if where.kit else "your gear", f"{session.minutes} min"]
    facts += [f"session {session.n} of {session.of}"] if session.of > 1 else []
    name = session.fault.name if session.fault is not None else session.lift.name
    lines = aside(name, setting.between.join(facts), setting)
    if session.cause is not None:
        lines += wrapped(f"Because: {human(session.cause.id)}. {session.cause.text}", setting.width)
    if session.worked is not None and session.fault is not None and session.worked.id != session.fault.id:
        lines += wrapped(f"So it works on what comes before it: {session.worked.name}.", setting.width)
    if session.cause is not None:
        lines += wrapped(throughout_said(session.cause, session.worked_cause), setting.width)
    return lines


def _chart(session: Session, setting: Setting) -> list[str]:
    bands = bands_of(session.worked, session.lift) if session.worked is not None else ()
    return chart(session.lift, session_bars(session), setting, bands=bands)


def _ends(session: Session) -> str:
    """When it ends, what is spare, and whether anything is less than its entry asks."""
    spare = session.spare_s
    done = 60 * session.minutes - spare
    said = f"Ends at {clock(done)}"
    if spare >= 60:
        said += f"; {duration(spare)} to spare, for rest or talk"
    elif spare:
        said += f"; {spare} s to spare"
    short = [block.drill.name for block in session.blocks if block.cut]
    return f"{said}. Less than the entry asks: {listed(short)}." if short else f"{said}."


def _block_lines(block: Block, after: Block | None, seen: set[str], where: Where, setting: Setting) -> list[str]:
    drill = block.drill
    due = cares(Due(drill, block.load, block.dials.catch, block.gear), seen)
    if block.loaded is not None and block.loaded.discs_kg and drill.load[0] < Load.LIGHT and UNLOADED not in seen:
        seen.add(UNLOADED)
        due.append(UNLOADED)
    lines = [line for text in due for line in hanging("! ", text, setting)]
    head = f"{clock(block.start_s):>{INDENT - 2}}  {drill.name}"
    end = f"to {clock(block.start_s + block.seconds)}"
    lines += aside(head, f"check{setting.between}{end}" if is_check(block) else end, setting)
    said = [
        ("Do", ", ".join(filter(None, (dose_words(drill, block.dose, setting), weight_words(block))))),
        ("Say", f'"{drill.cues[0]}"' if drill.cues else ""),
        ("Move on", f"when {standard_words(block)}"),
        ("If not", if_not_words(block, where.drills, setting)),
        ("Early", _early(block, after)),
        ("Gear", _stand_ins(block, where)),
        ("Not for", drill.not_for or ""),
    ]
    lines += labelled(said, setting, indent=INDENT, hang=LABEL)
    return lines


def _stand_ins(block: Block, where: Where) -> str:
    """What stands in for what isn't there; the rest has been fetched."""
    return gear_said([gear for gear in block.gear if gear.item not in where.have], where.have, where.items)


def _early(block: Block, after: Block | None) -> str:
    """The next drill; of the same one at another load how heavy it is then."""
    if block.if_early is None or after is None or block.part == "warm-up":
        return ""
    heavier = weight_words(after) if after.drill.id == block.drill.id else ""
    return ", ".join(filter(None, (f"go on to {after.drill.name.lower()}", heavier)))
