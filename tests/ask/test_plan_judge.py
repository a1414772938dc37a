"""The judge of plans can say no: each law, broken on purpose in a plan that kept it, is named."""

import json
from collections.abc import Callable, Mapping
from typing import Any

import pytest
from plan_paths import found_path, nodes
from plan_rules import broken_plan_rules
from shipped import worlds

from kb.ask.plan.plan import plan
from kb.ask.shelf import Shelf
from kb.make.library import Library
from kb.show.plan_json import plan_json
from kb.terms import LiftId

Answer = dict[str, Any]


def _drills(answer: Answer, n: int) -> list[Answer]:
    drills: list[Answer] = answer["sessions"][n - 1]["drills"]
    return drills


def _swap_new(answer: Answer) -> None:
    """The first new drill of session 1 with that of session 2."""
    one, two = _drills(answer, 1), _drills(answer, 3)
    at = next(n for n, each in enumerate(two) if each["new"])
    one[0], two[at] = two[at], one[0]


def _three_new(answer: Answer) -> None:
    two = _drills(answer, 2)
    _drills(answer, 1).append(two.pop(next(n for n, each in enumerate(two) if each["new"])))


def _early_again(answer: Answer) -> None:
    """What has waited longest comes a session earlier than its widened gap."""
    seen: dict[tuple[str, str], list[int]] = {}
    for n, session in enumerate(answer["sessions"], 1):
        for each in session["drills"]:
            seen.setdefault((each["id"], each["load"]), []).append(n)
    name, at = next((name, at) for name, at in seen.items() if len(at) > 2 and at[2] - at[1] > at[1] - at[0] > 0)
    late = _drills(answer, at[2])
    _drills(answer, at[1] + 1).append(late.pop(next(n for n, each in enumerate(late) if each["id"] == name[0])))


def _heavy_first(answer: Answer) -> None:
    """A load is done where it was still stick."""
    each = next(each for n in range(1, 10) for each in _drills(answer, n) if each["id"] == "high-hang-snatch")
    each["load"] = "light"


def _never(answer: Answer) -> None:
    """A drill's last day is left out."""
    for session in answer["sessions"]:
        session["drills"] = [each for each in session["drills"] if each["id"] != "air-squat" or each["exposure"] < 3]


def _working_in_a_light_week(answer: Answer) -> None:
    heavy = _drills(answer, len(answer["sessions"]))
    _drills(answer, 7).append(heavy[-1])


def _same_order(answer: Answer) -> None:
    """A session repeats the order of the one before for what both share."""
    for session in answer["sessions"]:
        session["drills"].sort(key=lambda each: (each["new"], each["id"]))


BREAKS: list[tuple[str, Callable[[Answer], Any]]] = [
    ("not new in the path's order", _swap_new),
    ("more new than may be", _three_new),
    ("short of the best|shrinks", _early_again),
    ("loaded before", _heavy_first),
    ("isn't held in the end", _never),
    ("working weight in a light week", _working_in_a_light_week),
    ("in the order of the last session", _same_order),
    ("isn't held on the last day|isn't held in the end", lambda answer: answer["sessions"].pop()),
    ("its number", lambda answer: answer["sessions"].insert(0, answer["sessions"][0])),
    ("a new placement", lambda answer: answer["sessions"][7].update(place=False)),
    ("its number, week or light", lambda answer: answer["sessions"][6].update(light=False)),
    ("nothing in it", lambda answer: _drills(answer, 1).clear()),
    ("not its parts", lambda answer: answer["sessions"][2].update(minutes=39)),
    ("warm-up is a quarter", lambda answer: answer["sessions"][2].update(warm_up=4)),
    ("doesn't take", lambda answer: _drills(answer, 2)[0].update(minutes=9)),
    ("expected", lambda answer: _drills(answer, 2)[0].update(exposure=5)),
    ("as work, expected", lambda answer: _drills(answer, 1)[0].update({"as": "work"})),
    ("new is what was never tried", lambda answer: _drills(answer, 1)[0].update(new=False)),
    ("a drill twice", lambda answer: _drills(answer, 1).append(_drills(answer, 1)[0])),
    ("fewer sessions than the bound", lambda answer: answer.update(lower_bound=99)),
    ("greatest of its parts", lambda answer: answer.update(lower_bound=1)),
    ("doesn't end with the lift", lambda answer: _drills(answer, len(answer["sessions"])).reverse()),
]


@pytest.mark.parametrize(("named", "breaks"), BREAKS, ids=[named for named, _ in BREAKS])
def test_a_broken_law_is_named(
    shelves: Mapping[LiftId, Shelf], library: Library, named: str, breaks: Callable[[Answer], Any]
) -> None:
    """Sound before, named after."""
    shelf = shelves[LiftId("snatch")]
    found = found_path(shelves, "snatch", "full")
    answer = json.loads(json.dumps(plan_json(plan(found, per_week=2, minutes=40), None, {})))
    world = worlds(library)[LiftId("snatch")]
    assert broken_plan_rules(answer, world, shelf.kits["full"], nodes(found)) == []
    breaks(answer)
    wrong = "\n".join(broken_plan_rules(answer, world, shelf.kits["full"], nodes(found)))
    assert any(part in wrong for part in named.split("|")), wrong
