"""Random classes keep every rule, whoever plans them: judged from the answer for programs alone (class_rules.py)."""

import json
from collections.abc import Callable, Mapping
from pathlib import Path
from random import Random
from typing import Any

import pytest
from class_rules import broken
from hypothesis import event, example, given, settings
from hypothesis import strategies as st

from kb.ask import read
from kb.ask.class_.build import Matter, matter_of
from kb.ask.class_.greedy import greedy
from kb.ask.class_.own import own_of
from kb.ask.class_.slots import plan_of
from kb.ask.shelf import Shelf
from kb.errors import NoAnswer
from kb.intake.class_file import class_file
from kb.show.class_json import class_json
from kb.solve.rotation import Effort, Undecided, best_plan
from kb.terms import LiftId, Stage

pytestmark = pytest.mark.no_cover

NAMES = ("Ada", "Bram", "Cleo", "Dov", "Elin", "Femi", "Greta", "Hugo")
QUICK = Effort(alone=0.5, together=0.3, drills=0.2)
LIFTS = ("snatch", "clean", "jerk")


def lifter(dice: Random, shelf: Shelf) -> dict[str, Any]:
    """One who comes: with a fault, of some cause, perhaps with a day's weight; new; or of many years."""
    if dice.random() < 0.2:
        return {"holds": []}
    if dice.random() < 0.15:
        return {"holds": [shelf.lift.drill], "weight_kg": dice.choice((30, 60, 60))}
    fault = shelf.faults[dice.choice(sorted(shelf.faults))]
    who: dict[str, Any] = {"fault": fault.id, "cause": dice.choice([cause.id for cause in fault.causes])}
    if shelf.lift.id == "clean" and dice.random() < 0.25:
        who = {"fault": "clean-slow-elbows", "cause": "stiff-wrists-lats"}  # with a partner drill
    if dice.random() < 0.5:
        who["weight_kg"] = dice.choice((20, 30, 35, 50, 80))
    return who


def a_class(seed: int, shelves: Mapping[LiftId, Shelf]) -> str:
    """A class file: alike and unlike lifters, more or less gear, one coach to three, patient or not."""
    dice = Random(seed)
    shelf = shelves[LiftId(dice.choice(LIFTS))]
    kinds = [lifter(dice, shelf) for _ in range(dice.randint(1, 3))]
    gear = {"bar": dice.randint(1, 6), "stick": dice.randint(2, 8), "bench": dice.randint(0, 2)}
    if dice.random() < 0.5:
        gear["discs"] = dice.randint(1, 6)
    aims = Random(-seed)  # what learners do today, where something is said of it
    ends = sorted(each for each, drill in shelf.drills.items() if Stage.PREPARE < drill.stage < Stage.FINISH)
    today = {"today": aims.sample(ends, aims.randint(1, 3))} if aims.random() < 0.4 else {}
    return json.dumps(
        {
            "lift": shelf.lift.id,
            **today,
            "minutes": dice.randint(30, 90),
            "coaches": dice.randint(1, 3),
            "most_wait_s": dice.choice((60, 180, 600)),
            "gear": gear,
            "known": sorted(shelf.drills) if dice.random() < 0.5 else [],
            "lifters": [{"name": name, **dice.choice(kinds)} for name in NAMES[: dice.randint(1, 7)]],
        },
    )


Understood = Callable[[str], tuple[Path, Matter]]


@pytest.fixture(scope="session")
def understood(
    db: read.sqlite3.Connection, shelves: dict[LiftId, Shelf], tmp_path_factory: pytest.TempPathFactory
) -> Understood:
    """A class file's text understood, and where it stands; NoAnswer where somebody can't be given a chain."""
    file = tmp_path_factory.mktemp("classes") / "class.yaml"

    def understand(text: str) -> tuple[Path, Matter]:
        file.write_text(text, "utf-8")
        asked = class_file(file, db)
        return file, matter_of(asked, own_of(asked, shelves.__getitem__))

    return understand


@pytest.fixture(scope="session")
def drawn(shelves: dict[LiftId, Shelf]) -> Callable[[int], str]:
    """A random class file by its seed."""
    return lambda seed: a_class(seed, shelves)


@given(seed=st.integers(0, 10**9))
@example(seed=364)  # two share what they go on with, and the second begins late
@settings(max_examples=12, deadline=None)
def test_every_plan_keeps_every_rule(seed: int, understood: Understood, drawn: Callable[[int], str]) -> None:
    """The solver's and the one built in plain Python, which has no less idle time than is proved.

    Whether two share a bar, or up to four.
    """
    try:
        file, asked = understood(drawn(seed))
        more = asked.asked._replace(to_a_bar=Random(seed).choice((2, 3, 4)))
        asked = matter_of(more, asked.owns)
    except NoAnswer:
        event("somebody has no chain")
        return
    built = greedy(asked.rotation, tries=60)
    if built is not None:
        assert broken(class_json(plan_of(asked, built)), file) == []
    try:
        best = best_plan(asked.rotation, built, QUICK)
    except Undecided:
        event("undecided")
        return
    if best is None:
        event("impossible")
        assert built is None
        return
    answer = class_json(plan_of(asked, best))
    event("optimal" if answer["optimal"] else "a plan")
    assert broken(answer, file) == []
    if built is not None and answer["optimal"]:
        assert class_json(plan_of(asked, built))["idle_s"] >= answer["idle_s"]


def test_partners_help_each_other_and_one_alone_is_helped(understood: Understood) -> None:
    """Three on a chain with a partner drill: two are each other's partner, the third gets one from the others."""
    people = [{"name": n, "fault": "clean-slow-elbows", "cause": "stiff-wrists-lats"} for n in NAMES[:3]]
    text = json.dumps(
        {
            "lift": "clean",
            "minutes": 75,
            "gear": {"bar": 4, "stick": 6},
            "lifters": [*people, {"name": "Zoe", "fault": "hips-rise-first", "cause": "lost-back-angle"}],
        }
    )
    file, asked = understood(text)
    drills = {doing.drill.id for doings in asked.doings for doing in doings}
    assert "partner-elbow-lift" in drills
    found = best_plan(asked.rotation)
    assert found is not None
    answer = class_json(plan_of(asked, found))
    assert broken(answer, file) == []
    helps = [slot for each in answer["lifters"] for slot in each["slots"] if slot["as"] == "helps"]
    assert len(helps) == 3
