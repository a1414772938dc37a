"""How a library's quality page reads."""

from dataclasses import replace
from pathlib import Path

import pytest
from report_small import FAULT, the_library

from kb.check.report.gaps import Gap
from kb.check.report.report import Report, report
from kb.check.report.reviewed import Review, Unreviewed
from kb.show.gap_words import gap_asked, gap_worth
from kb.show.report_text import report_text
from kb.show.setting import Setting
from kb.terms import Catch, FaultId, LiftId, Load, Speed, Stage

SWINGS = Gap(
    lift=LiftId("jerk"),
    fault=FaultId("short-split"),
    cause="no-marks",
    works_on=(FaultId("short-split"), "no-marks"),
    stage=Stage.SEGMENT,
    reach=("drive", "split"),
    speed=Speed.FULL,
    load=Load.STICK,
    catch=Catch.FULL,
    opens=("stick",),
    joins=0,
    saves=0,
    acting=0,
)


@pytest.fixture(scope="module")
def found() -> Report:
    """The report of the small library."""
    return report(the_library())


def test_the_sum_of_it(found: Report) -> None:
    """Entries, questions, and what could go."""
    said = " ".join("\n".join(report_text(found, Setting())).split())
    assert said.startswith(
        "5 drills, 1 fault, 4 positions, 2 equipment and 1 lift. With stick and hall, 2 of 4 questions for a chain have"
        " one. Of the drills 2 could go without any answer lost or dearer, 1 of them kept for nothing else."
    )
    assert "stand-tall nothing: a candidate for removal" in said
    assert f"look-at-hands a quick check for {FAULT}" in said
    assert f"{FAULT}, no-idea no drill" in said


def test_numbers_stand_in_columns(found: Report) -> None:
    """Under their heads; a nought is a point."""
    lines = report_text(found, Setting())
    assert "  drills at  position  segment  join  whole" in lines
    assert "  start             .        2     .      1" in lines
    assert "  receive           1        .     .      1" in lines
    good_for = lines[lines.index("What each drill is good for") :]
    (piece,) = (line for line in good_for if line.split()[:1] == ["piece"])
    assert piece.split() == ["piece", "0/1/1", ".", "."]


def test_what_a_new_drill_would_have_to_be() -> None:
    """For what, where, how, how heavy; and what it is worth."""
    assert gap_asked(SWINGS) == (
        "jerk: a segment for no-marks of short-split: from the drive to the split, at full speed, with a stick, caught"
        " in the split."
    )
    assert gap_worth(SWINGS) == "opens its chain with stick; none acts on it now"
    more = SWINGS._replace(opens=(), joins=1, saves=450, acting=1)
    assert gap_worth(more) == "brings it within one sitting and saves 450 (1.5 notches); 1 acts on it now"
    dear = SWINGS._replace(saves=-300, acting=2)
    assert gap_worth(dear) == "opens its chain with stick and costs the others 300 (1.0 notches); 2 act on it now"
    held = SWINGS._replace(
        lift=LiftId("clean"),
        stage=Stage.POSITION,
        reach=("knee", "knee"),
        speed=Speed.HELD,
        load=Load.LIGHT,
        catch=Catch.NONE,
    )
    assert (
        gap_asked(held)
        == "clean: a position for no-marks of short-split: at the knee, held still, with a light weight."
    )
    earlier = SWINGS._replace(stage=Stage.PREPARE, reach=None, works_on=(FaultId("dips-forward"), "stiff"))
    assert gap_asked(earlier) == "jerk: preparation for stiff of dips-forward (which makes short-split)."


def test_what_was_read(found: Report) -> None:
    """What changed since, by whom and when it was read; of many that never were, some."""
    read = Review("piece", "0" * 16, "2026-03-31", "a reader")
    lines = report_text(found._replace(unreviewed=Unreviewed(("a", "b", "c", "d", "e", "f"), (read,))), Setting())
    at = lines.index("Not read since they changed")
    said = " ".join("\n".join(lines[at:]).split())
    assert "piece last read 2026-03-31 by a reader" in said
    assert (
        "6 entries were never marked as read (`drillpath check --reviewed ID --by WHO`): a, b, c, d and 2 more." in said
    )


def test_a_kit_without_a_chain_for_a_fault(found: Report) -> None:
    """It is named; and where all is well nothing is said."""
    (first, *others) = found.kits
    lines = report_text(found._replace(kits=(first._replace(without=(FAULT,)), *others)), Setting())
    assert f"  {first.kit}: no chain for {FAULT}" in lines


def test_empty_parts_have_no_heading(found: Report) -> None:
    """Nothing idle, thin, missing, unread: no heading says so."""
    best = found._replace(
        contributions=tuple(each for each in found.contributions if each.counts),
        gaps=(),
        readings=(),
        unreviewed=Unreviewed((), ()),
        coverage=tuple(each._replace(thin=()) for each in found.coverage),
    )
    lines = report_text(best, Setting())
    for title in (
        "Drills that nothing would miss",
        "What a new drill would have to be",
        "Thin places",
        "Hardest to read",
    ):
        assert title not in lines


@pytest.mark.parametrize("width", [40, 80, 100])
def test_no_line_is_too_long(found: Report, width: int) -> None:
    """The tables are for 60 columns and more; all else fits whatever there is."""
    lines = report_text(found, Setting(width))
    assert max(map(len, lines)) <= max(width, 60)


def test_the_root_is_never_shown() -> None:
    """A report is the same wherever the library lies."""
    here = report(the_library())
    there = report(replace(the_library(), root=Path("nowhere")))
    assert report_text(here, Setting()) == report_text(there, Setting())
