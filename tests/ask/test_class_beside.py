"""Who ends in a part of the lift, and what else was said of a lifter, in a class (common practice, no source)."""

from functools import cache
from pathlib import Path

import pytest

from kb.ask import read
from kb.ask.class_.slots import ClassPlan
from kb.errors import BadInput
from kb.intake.class_file import class_file
from kb.show.class_cares import cares_of
from kb.solve.planning import planned
from kb.terms import Catch, Stage

HEAD = "lift: clean\nminutes: 60\ncoaches: 2\ngear: {bar: 4, stick: 8}\nlifters:\n"


def plan_of(text: str, db: read.sqlite3.Connection, tmp_path: Path) -> ClassPlan:
    """The class planned."""
    file = tmp_path / "class.yaml"
    file.write_text(HEAD + text, "utf-8")
    return planned(class_file(file, db), cache(lambda lift: read.shelf(db, lift)), prove=False).plan


@pytest.mark.parametrize(
    "who",
    [
        "{name: Ann, fault: clean-low-elbows, cause: late-elbows, to: power-clean}",
        "{name: Ann, holds: [], to: hang-power-clean}",
        "{name: Ann, holds: [power-clean], to: power-clean}",
        "{name: Ann, lift: jerk, fault: jerk-press-out, to: power-jerk}",
    ],
)
def test_nothing_is_caught_deeper_than_where_one_ends(who: str, db: read.sqlite3.Connection, tmp_path: Path) -> None:
    """Mending, learning or practising: neither in the list nor after it; whoever has no `to` goes on as before."""
    found = plan_of(f"  - {who}\n  - {{name: Bo, holds: [front-squat]}}\n", db, tmp_path)
    ann = found.lifters[0]
    drills = [slot.drill for slot in ann.slots] + [more.drill for more in ann.goes_on]
    assert drills
    assert all(each.catch <= Catch.POWER for each in drills if each.stage not in (Stage.PREPARE, Stage.FINISH))


def test_what_was_said_is_told_before_the_class(db: read.sqlite3.Connection, tmp_path: Path) -> None:
    """A trouble: not by this plan; a niggle and a healed injury: their care; the rest: what is minded, once for all."""
    found = plan_of(
        '  - {name: Ann, holds: [], said: "71, hates splitting"}\n'
        '  - {name: Bo, holds: [], said: "her shoulder hurts at night"}\n'
        '  - {name: Cy, holds: [], said: "72, niggle in the knee"}\n'
        '  - {name: Di, holds: [], said: "wrist broken ten years ago, healed"}\n',
        db,
        tmp_path,
    )
    cares = cares_of(found)
    assert any(each.startswith("Bo: not by this plan") for each in cares)
    assert any(each.startswith("Cy: A niggle") for each in cares)
    assert any(each.startswith("Di: hurt there once") for each in cares)
    assert sum(each.startswith("Ann and Cy: Past sixty") for each in cares) == 1
    assert not any("`--to" in each for each in cares)
    assert [each.lifter.name for each in found.lifters] == ["Ann", "Cy", "Di"]


def test_a_class_of_those_who_must_ask_first_is_none(db: read.sqlite3.Connection, tmp_path: Path) -> None:
    """Said in one sentence, with the line, and with what lets them in."""
    with pytest.raises(BadInput, match=r"nobody is left to plan for.*`cleared: her doctor`"):
        plan_of('  - {name: Bo, holds: [], said: "her shoulder hurts at night"}\n', db, tmp_path)


def test_an_end_that_is_none_is_refused(db: read.sqlite3.Connection, tmp_path: Path) -> None:
    """With the file, the line and the field; so is a day's weight beside it."""
    with pytest.raises(BadInput, match="line 6, `weight_kg`: a day's weight is the whole lift's"):
        plan_of("  - {name: Ann, holds: [power-clean], to: power-clean, weight_kg: 40}\n", db, tmp_path)
    with pytest.raises(BadInput, match="line 6, `to`"):
        plan_of("  - {name: Ann, holds: [], to: tall-jerk}\n", db, tmp_path)
