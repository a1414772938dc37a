"""How a difference between two libraries reads: each kind of line, on a narrow setting and on a wide one."""

from dataclasses import replace

import pytest
from report_small import FAULT, a_drill, the_library

from kb.check.diff.diff import Diff, diff
from kb.check.diff.edges import Edges
from kb.check.diff.entries import Changed, Entries, Field
from kb.make.library import Library
from kb.show.diff_text import diff_text
from kb.show.setting import Setting
from kb.terms import Dose, DrillId, Load

NONE = Diff(Entries((), (), (), ()), Edges((), ()), ("hall",))


def _said(found: Diff, width: int = 80) -> str:
    return "\n".join(diff_text(found, "a", "b", Setting(width)))


def _with(library: Library, *changed: str, **more: object) -> Library:
    drills = {id_: each._replace(**more) if id_ in changed else each for id_, each in library.drills.items()}  # type: ignore[arg-type]
    return replace(library, drills=drills)


def test_nothing() -> None:
    """One line, and no heading under it."""
    assert _said(NONE) == "From a to b: nothing differs."
    assert _said(NONE._replace(unasked="the first can't be asked")) == (
        "From a to b: no entry differs.\nChains and paths were not compared: the first can't be asked."
    )


def test_the_sum_of_it() -> None:
    """Entries, edges, and of all questions those that are answered otherwise."""
    before = the_library()
    after = replace(before, drills={id_: each for id_, each in before.drills.items() if id_ != "piece"})
    said = " ".join(_said(diff(before, after)).split())
    assert said.startswith(
        "From a to b: entries: 1 removed; edges: 0 more, 3 fewer; 2 of 6 chains and 0 of 3 paths differ."
    )
    assert f"{FAULT}, swings (snatch; full and hall)" in said
    assert "+ slow-piece, - piece" in said
    assert "- slow-piece eases piece (slower)" in said


def test_the_same_drills_are_one_line() -> None:
    """Only cost and time differ; or a load."""
    before = the_library()
    longer = _with(before, "piece", dose=Dose(rounds=3, reps=3, rest_s=30))
    assert "the same drills: cost 2," in _said(diff(before, longer))
    lighter = _with(before, "piece", load=(Load.STICK, Load.STICK))
    assert "other load piece" in _said(diff(before, lighter))


def test_what_is_opened_and_what_is_new() -> None:
    """Where there was no answer, why; where there was no question, that it wasn't asked."""
    before = the_library()
    told = a_drill("told-how", "start", "hip", load=(Load.STICK, Load.LIGHT))
    told = told._replace(faults=(told.faults[0]._replace(cause="no-idea"),))
    opened = _said(diff(before, replace(before, drills={**before.drills, told.id: told})))
    assert "before: no answer: no drill for this cause" in opened
    assert "after:  cost" in opened
    fault = before.faults[FAULT]
    fewer = replace(before, faults={FAULT: fault._replace(causes=fault.causes[1:])})
    assert "before: not asked" in _said(diff(fewer, before))


def test_strengthening_that_came_is_said() -> None:
    """The chain is the same, what is offered after it isn't."""
    before = the_library()
    fault = before.faults[FAULT]
    weak = fault._replace(causes=(fault.causes[0]._replace(kind="strength"),))
    before = replace(before, faults={FAULT: weak})
    squat = a_drill("squat", "start", "start", stage=before.drills[DrillId("full-snatch")].stage.FINISH, reach={})
    said = _said(diff(before, replace(before, drills={**before.drills, squat.id: squat})))
    assert "+ squat to strengthen" in " ".join(said.split())
    other_way = _said(diff(replace(before, drills={**before.drills, squat.id: squat}), before))
    assert "- squat to strengthen" in " ".join(other_way.split())


@pytest.mark.parametrize(
    ("before", "after", "said"),
    [
        ("slow", "full", "slow -> full"),
        (None, 3, "not set -> 3"),
        (["a"], ["b", "a"], "+ b"),
        (["a", "b"], ["b"], "- a"),
        (["a", "b"], ["b", "a"], "in another order"),
        (None, [{"fault": "f", "cause": "c"}], "+ fault f, cause c"),
        ([["a", "b"]], [["a"]], "- a b, + a"),
        ("x" * 100, "y" * 100, "changed"),
        (["x" * 50] * 9, [f"{n}" * 60 for n in range(9)], "9 gone, 9 new"),
    ],
)
def test_values(before: object, after: object, said: str) -> None:
    """A word as it was and is, what a list gained and lost; what is long is only said to have changed."""
    changed = Changed("drill", "d", "d", (Field("field", before, after),), ("Do",))
    text = _said(NONE._replace(entries=Entries((), (), (), (changed,))))
    assert f"field: {said}" in " ".join(text.split())
    assert "text: Do" in text


@pytest.mark.parametrize("width", [40, 80, 100])
def test_no_line_is_too_long(width: int) -> None:
    """Whatever the width, but for an id that is longer."""
    before = the_library()
    after = replace(before, drills={id_: each for id_, each in before.drills.items() if id_ != "piece"})
    found = diff(before, after)
    assert max(map(len, diff_text(found, "a", "b", Setting(width)))) <= width
