"""The sheet of a session: what kb/show/session_text.py says on a terminal, to be carried about and ticked."""

from collections.abc import Mapping

from kb import dose as doses
from kb.ask.session.records import Block, Session
from kb.dose import minutes
from kb.show.bars import bands_of
from kb.show.care import Due, begun, cares
from kb.show.chart_svg import chart_figure
from kb.show.coach_words import duration, human, throughout_said
from kb.show.entry_lines import gear_said
from kb.show.session_text import Where, session_bars
from kb.show.session_words import PARTS, clock, dose_words, if_not_words, weight_words
from kb.show.setting import Setting
from kb.show.sheet.sheet import Sheet, html
from kb.show.sheet.told import Told, fetched, looks, lost_said, minds, steps
from kb.terms import Load, PositionId

__all__ = ["session_sheet"]

FINE = Setting(fine=True)
"""Paper and screens show every character."""


def session_sheet(
    session: Session, where: Where, paper: str = "a4", *, figures: Mapping[PositionId, str] | None = None
) -> str:
    """A session as a whole HTML document; its drills must have their text.

    `paper` is a key of kb.show.sheet.fit.PAPERS; `figures` pictures of positions as `svg` elements, drawn over the
    chart's points.
    """
    lift, fault, bars = session.lift, session.fault, session_bars(session)
    bands = bands_of(session.worked, lift) if session.worked is not None else ()
    sheet = Sheet(
        title=fault.name if fault is not None else lift.name,
        facts=_facts(session, where),
        chart=chart_figure(lift, bars, bands=bands, figures=figures),
        lower_chart=chart_figure(lift, bars, bands=bands, figures=figures, wide_figures=False) if figures else "",
        drills=_drills(session, where),
        fetch=fetched([block.gear for block in session.blocks], where.items),
        because=_because(session),
        after=_after(session),
        ask_first=any(
            block.load is Load.WORKING or block.drill.not_for or "breath" in block.drill.cautions
            for block in session.blocks
        ),
    )
    return html(sheet, paper)


def _facts(session: Session, where: Where) -> tuple[str, ...]:
    facts = [session.lift.name] if session.fault is not None else []
    facts += [f"{where.kit} kit" if where.kit else "your gear", f"{session.minutes} min"]
    facts += [f"session {session.n} of {session.of}"] if session.of > 1 else []
    return tuple(facts)


def _because(session: Session) -> tuple[str, ...]:
    said = []
    if session.cause is not None:
        said.append(f"Because: {human(session.cause.id)}. {session.cause.text}")
        said.append(throughout_said(session.cause, session.worked_cause, briefly=True))
    if session.worked is not None and session.fault is not None and session.worked.id != session.fault.id:
        said.append(f"So it works on what comes before it: {session.worked.name}.")
    return tuple(each for each in said if each)


def _after(session: Session) -> tuple[str, ...]:
    spare = session.spare_s
    ends = f"Ends at {clock(60 * session.minutes - spare)}"
    ends += f"; {duration(spare)} to spare." if spare else "."
    left = [f"{each.drill.name}: {each.why}" for each in session.left_out]
    return (ends, *([f"Left out. {'; '.join(left)}."] if left else []))


def _drills(session: Session, where: Where) -> tuple[Told, ...]:
    seen = begun(gear for block in session.blocks for gear in block.gear)
    told: list[Told] = []
    numbers = _numbers(session)
    part = ""
    for block, number in zip(session.blocks, numbers, strict=True):
        early = [n for each, n in zip(session.blocks, numbers, strict=True) if n > number and _is_early(block, each)]
        before = PARTS[block.part] if block.part != part else ""
        part = block.part
        if_early = f"go on to {early[0]}" if early and number else ""
        told.append(_told(number, block, where, seen)._replace(before=before, if_early=if_early))
    return tuple(told)


def _numbers(session: Session) -> list[int]:
    """The numbers of the chart's bars; 0 for what stands around the drills."""
    found, last = [], 0
    for block in session.blocks:
        charted = block.part in ("chain", "lift")
        last += charted
        found.append(last if charted else 0)
    return found


def _is_early(block: Block, other: Block) -> bool:
    """Whether a block goes on to another where it is done early."""
    return other.drill.id == block.if_early


def _counted(block: Block) -> tuple[str, int]:
    """What counts, in words, and how many tries: all of them where fewer are done than the standard speaks of."""
    standard, dose = block.drill.standard, block.dose
    done = dose.sides * (doses.tries(dose) if dose.reps else dose.rounds)
    if standard.of <= done:
        return f"{standard.count} of {standard.of}", standard.of
    return f"all {done}" if done > 1 else "it", done


def _told(number: int, block: Block, where: Where, seen: set[str]) -> Told:
    drill = block.drill
    counted, boxes = _counted(block)
    look, look_more = looks(drill)
    aside = block.part in ("warm-up", "finish")
    return Told(
        number=number,
        name=drill.name,
        work=block.work,
        minutes=minutes(block.seconds),
        dose=dose_words(drill, block.dose, FINE),
        counted=counted,
        seen=drill.standard.seen,
        boxes=boxes,
        brief=aside or not block.work,
        warm_up=block.part == "warm-up",
        at=clock(block.start_s),
        load=weight_words(block),
        cut="Less than the entry asks" if block.cut else "",
        cares=tuple(cares(Due(drill, block.load, block.dials.catch, block.gear), seen)),
        steps=steps(drill),
        look=look,
        look_more=look_more,
        cues=drill.cues,
        if_not=if_not_words(block, where.drills, FINE),
        gear=gear_said(block.gear, where.have, where.items),
        lost=lost_said(block.gear, where.have, seen),
        mind=minds(drill),
        not_for=drill.not_for or "",
    )
