"""What kb/docs says of doses and weights is what comes out."""

import re
from pathlib import Path

import pytest
import yaml

from kb.bests import Best
from kb.check.stretch_hold import rule as stretches
from kb.check.too_many_lifts import rule as lifts
from kb.discs import BARS, DISCS, iron_of
from kb.dose import dose_seconds
from kb.loading import weighed
from kb.make.library import Library
from kb.show.load_text import Answer, load_text
from kb.show.setting import Setting
from kb.terms import Dose, DrillId, Load

DOCS = Path(__file__).resolve().parents[1] / "kb" / "docs"
ROWS = re.findall(r"^\| `(\{.*?\})` \| .*? \| (.*?) \|$", (DOCS / "dose.md").read_text(encoding="utf-8"), re.MULTILINE)


@pytest.mark.parametrize(("written", "takes"), ROWS)
def test_a_doses_example_takes_what_is_said(written: str, takes: str) -> None:
    """To the second."""
    given = yaml.safe_load(written)
    dose = Dose(**{**given, "tempo": tuple(given["tempo"]) if "tempo" in given else None})
    found = re.search(r"(\d+) min(?: (\d+) s)?$", takes)
    assert found
    assert dose_seconds(dose) == 60 * int(found[1]) + int(found[2] or 0)


def test_there_is_an_example_of_each_kind() -> None:
    """Rounds, holds, good repetitions and intervals."""
    assert len(ROWS) >= 5
    for kind in ("rounds", "hold_s", "good", "every_s"):
        assert any(kind in written for written, _ in ROWS)


def test_the_example_of_a_load_is_what_comes_out(library: Library) -> None:
    """Line by line, as far as it is shown."""
    block = re.findall(r"^```text\n\$ (.*?)\n(.*?)^```$", (DOCS / "load.md").read_text("utf-8"), re.MULTILINE | re.S)
    (command, shown), *more = block
    assert not more
    assert command == "drillpath load hang-clean --best clean=80"
    drill, bests = library.drills[DrillId("hang-clean")], {"clean": Best(80)}
    names = {lift.id: lift.name for lift in library.lifts.values()}
    found = weighed(drill, bests, iron_of())
    lines = load_text(Answer(drill, found, iron_of(), Load.LIGHT, bests, names), Setting())
    expected = shown.removesuffix("...\n").splitlines()
    assert lines[: len(expected)] == expected


def test_the_numbers_of_the_page_are_the_programs() -> None:
    """Bars and discs."""
    text = (DOCS / "load.md").read_text(encoding="utf-8")
    for name, kg in BARS["kg"].items():
        assert f"{name} ({kg:g} kg)" in text
    assert " ".join(f"{disc:g}" for disc in DISCS["lb"]) in text


def test_the_shipped_library_keeps_to_what_is_published(library: Library) -> None:
    """Prilepin's table, and the position stand on flexibility; there is something to judge."""
    assert list(lifts(library)) == []
    assert list(stretches(library)) == []
    judged = [drill for drill in library.drills.values() if drill.load_from and drill.load_from.percent[1] >= 70]
    assert len(judged) >= 5


def test_every_drill_that_goes_by_a_best_can_be_loaded(library: Library) -> None:
    """For lifters from 40 to 200 kg there is a weight in its range, or the bar is said to be too heavy."""
    for drill in library.drills.values():
        if drill.load_from is None:
            continue
        for kg in (40.0, 75.0, 200.0):
            found = weighed(drill, {drill.load_from.lift: Best(kg)}, iron_of("training"))
            assert found.most is not None or "take a lighter bar" in found.why
            if found.most is not None and found.least is not None and found.wanted is not None:
                assert found.most.kg <= found.wanted[1] + 0.001
                assert found.least.kg <= found.most.kg
