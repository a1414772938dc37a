"""Bars that stand idle go to those who take turns at one (common practice, no source)."""

from functools import cache
from pathlib import Path

import pytest

from kb.ask import read
from kb.ask.class_.with_sticks import stick_s
from kb.intake.class_file import class_file
from kb.solve.planning import planned

OPEN = """\
name: Open session
lift: clean
minutes: 90
coaches: 2
gear: {{bar: {bars}, stick: plenty, training-bar: 0}}
today: [hang-clean, full-clean]
lifters:
"""
PEOPLE = (
    [f"  - {{name: C{n}, lift: clean-and-jerk, holds: [full-clean-and-jerk]}}\n" for n in range(3)]
    + [f"  - {{name: M{n}, fault: jumps-forward}}\n" for n in range(6)]
    + [f"  - {{name: B{n}, holds: [front-squat, thigh-slide]}}\n" for n in range(5)]
)


@pytest.mark.no_cover
@pytest.mark.parametrize("bars", [8, 5])
def test_every_bar_is_out(bars: int, db: read.sqlite3.Connection, tmp_path: Path) -> None:
    """Fourteen people: each bar is used; with eight nobody who could have one holds a stick, and who works up has their
    own."""
    file = tmp_path / "class.yaml"
    file.write_text(OPEN.format(bars=bars) + "".join(PEOPLE), "utf-8")
    found = planned(class_file(file, db), cache(lambda lift: read.shelf(db, lift))).plan
    lists = [slot for each in found.lifters for slot in each.slots]
    used = {slot.station for slot in lists if slot.station.startswith("bar ")}
    used |= {more.station for each in found.lifters for more in each.goes_on if more.station.startswith("bar ")}
    assert len(used) == bars
    assert bars < 8 or stick_s(found) == 0
    own = [{slot.station for slot in each.slots if slot.station.startswith("bar ")} for each in found.lifters[:3]]
    assert bars < 8 or len(set().union(*own)) == 3
