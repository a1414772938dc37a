"""Answers for programs: the shapes of DESIGN section 6, key by key."""

import json
from typing import Any

from handmade import drill, library
from small_answers import small_chain, small_shelf

from kb.ask.find import Findings, Hit
from kb.ask.harder import Harder
from kb.ask.matter import matter_of
from kb.ask.near import Near
from kb.ask.path import path
from kb.ask.question import ChainQuestion
from kb.ask.rehearse import Opener, Rehearsal, rehearse
from kb.ask.swap import Easier, Opens, Swap
from kb.errors import Problem
from kb.kit import Gear
from kb.show.as_json import (
    chain_json,
    find_json,
    kits_json,
    no_chain_json,
    path_json,
    problems_json,
    show_json,
    swap_json,
)
from kb.terms import DrillId, FaultId, ItemId, Load

BAR, STICK = ItemId("bar"), ItemId("stick")


def rehearsed(fault: str) -> Rehearsal:
    """What a stick allows of a fault of the clean, whether or not there is a chain."""
    shelf = small_shelf("clean")
    return rehearse(matter_of(shelf, ChainQuestion(fault=FaultId(fault), have=shelf.kits["stick"])))


def plain(answer: dict[str, Any]) -> dict[str, Any]:
    """The same after a journey as text: whatever it holds must be JSON."""
    again: dict[str, Any] = json.loads(json.dumps(answer))
    assert again == answer
    assert again["version"] == 1
    return again


def test_a_chain_has_every_key_of_its_shape() -> None:
    """Of the answer, a tell, a route, a drill and a step."""
    answer = plain(chain_json(small_chain("hips-rise-first"), "full"))
    assert list(answer) == (
        "version fault cause lift load kit earlier throughout gone tells other_causes finish strengthen routes".split()
    )
    assert {key: answer[key] for key in ("fault", "cause", "lift", "load", "kit", "earlier")} == {
        "fault": "hips-rise-first",
        "cause": "lost-back-angle",
        "lift": "clean",
        "load": "light",
        "kit": "full",
        "earlier": None,
    }
    assert list(answer["tells"][0]) == "do look seconds drill yes no".split()
    assert answer["other_causes"][0] == {"id": "hips-set-low", "kind": "set-up"}
    route = answer["routes"][0]
    assert list(route) == "cost optimal gap seconds sittings drills".split()
    assert route["sittings"] == [[0, len(route["drills"])]]
    assert route["seconds"] == sum(each["seconds"] for each in route["drills"])
    first, second, *_ = route["drills"]
    assert list(first) == [
        *("id name stage as reach leaves_out speed load catch aid cue cautions seconds".split()),
        *("addresses tests gear standard step".split()),
    ]
    assert first["step"] is None
    assert first["cue"] == "Squeeze the bar before it moves."
    assert first["gear"][0] == {"item": "bar", "using": "bar"}
    assert set(first["standard"]) == {"count", "of", "seen"}
    assert second["step"] == {
        "size": 2,
        "changes": [
            {"dial": "reach", "from": "start", "to": "start-knee"},
            {"dial": "speed", "from": "held", "to": "slow"},
        ],
    }


def test_an_earlier_fault_is_named_with_its_cause() -> None:
    """What the chain works on, where that isn't what was asked."""
    answer = plain(chain_json(small_chain("bar-drifts-forward", cause="made-by-hips-rise"), None))
    assert answer["earlier"] == {"fault": "hips-rise-first", "cause": "lost-back-angle", "throughout": "", "gone": ""}
    assert answer["kit"] is None


def test_preparation_has_no_dials() -> None:
    """Neither reach nor speed, load, catch."""
    found = small_chain("jerk-dips-forward", "jerk", cause="stiff-ankles")
    first = chain_json(found, "full")["routes"][0]["drills"][0]
    assert first["stage"] == "prepare"
    assert [first[key] for key in ("reach", "speed", "load", "catch")] == [None] * 4


def test_no_chain_says_why_and_what_would_open_one() -> None:
    """An item, two that do it together, or a prerequisite."""
    rehearsal = Rehearsal((drill("a"),), (Opener((BAR,)), Opener((BAR, STICK)), Opener(prerequisite=DrillId("b"))))
    lift = small_shelf("clean").lift
    assert plain(no_chain_json("nothing", rehearsal, lift=lift)) == {
        "version": 1,
        "routes": [],
        "why": "nothing",
        "rehearse": [{"id": "a", "name": "A"}],
        "rehearse_in_full": [],
        "would_open": [{"item": "bar"}, {"items": ["bar", "stick"]}, {"prerequisite": "b"}],
        "session": None,
    }
    assert plain(no_chain_json("too short", None, lift=lift))["rehearse"] == []


def test_what_stands_in_no_chain_is_told_with_its_dose() -> None:
    """Strengthening and what can be rehearsed: as a drill of a route, with what its entry says besides."""
    found = small_chain("hips-rise-first", cause="weak-legs-off-floor")
    answer = plain(chain_json(found, "full"))
    more = ["dose", "load_from", "not_for"]
    (squat,) = answer["strengthen"]
    assert list(squat) == [*answer["routes"][0]["drills"][0], *more]
    assert (squat["id"], squat["as"], squat["load"], squat["step"]) == ("back-squat", "work", "working", None)
    assert {"rounds", "reps", "rest_s"} <= set(squat["dose"])
    assert squat["cue"]
    stick = rehearsed("hips-rise-first")
    told = plain(no_chain_json("x", stick, lift=small_shelf("clean").lift))["rehearse_in_full"]
    assert [list(each)[-3:] for each in told] == [more] * len(stick.entries)


def test_a_path_marks_its_gateways() -> None:
    """Each drill in order, with its step."""
    shelf = small_shelf("clean")
    found = path(shelf, have=shelf.kits["full"])
    answer = plain(path_json(found, "full", {found.entries[0].drill.id}))
    assert list(answer) == "version lift kit cost optimal gap drills".split()
    assert list(answer["drills"][0]) == "id name stage reach load gateway step".split()
    assert [each["gateway"] for each in answer["drills"][:2]] == [True, False]
    assert answer["drills"][-1]["load"] == "working"


def test_what_was_found_has_scores() -> None:
    """A caution empties both lists."""
    hit = Hit("fault", "f", "Fault", ("clean",), 2.5)
    assert plain(find_json(Findings(None, (hit,), (hit._replace(kind="drill"),)))) == {
        "version": 1,
        "caution": None,
        "may_clear": False,
        "faults": [{"id": "f", "name": "Fault", "lifts": ["clean"], "score": 2.5}],
        "drills": [{"id": "f", "name": "Fault", "score": 2.5}],
    }
    assert plain(find_json(Findings("Ask."))) == {
        "version": 1,
        "caution": "Ask.",
        "may_clear": False,
        "faults": [],
        "drills": [],
    }


def test_an_entry_is_shown_as_it_is_stored() -> None:
    """With its kind, and what stands at its default left out."""
    answer = plain(show_json("drill", library().drills[DrillId("tall-clean")]))
    assert (answer["kind"], answer["id"], answer["load"]) == ("drill", "tall-clean", ["stick", "light"])
    assert "cautions" not in answer


def test_a_swap_says_what_is_kept_and_lost() -> None:
    """And what one more item opens."""
    found = Swap(
        drill("a"),
        True,
        (Gear(BAR, STICK, "weight"),),
        Load.STICK,
        ("weight",),
        (Easier(drill("d"), "slower", DrillId("a")),),
        (Harder(drill("e"), "all of it"), Harder(drill("f"), "")),
        (Near(drill("b"), (FaultId("m"),), (FaultId("n"),), ("k",), ("l",), 3),),
        (Opens(BAR, (DrillId("c"),)),),
    )
    assert plain(swap_json(found)) == {
        "version": 1,
        "drill": "a",
        "doable": True,
        "using": {"bar": "stick"},
        "lost": ["weight"],
        "with_one": [],
        "quiet": False,
        "without": [],
        "barred": [],
        "gently": [],
        "easier": [{"id": "d", "name": "D", "eases": "slower", "than": "a"}],
        "turn_up": "",
        "turn_up_of": "a",
        "harder": [
            {"id": "e", "name": "E", "eased": "all of it", "turned": []},
            {"id": "f", "name": "F", "eased": "", "turned": []},
        ],
        "swaps": [
            {
                "id": "b",
                "name": "B",
                "keeps": ["works on m", "k"],
                "loses": ["n is not worked on", "l"],
                "distance": 3,
            }
        ],
        "strength": [],
        "one_more": [{"item": "bar", "opens": ["c"]}],
    }


def test_kits_and_problems() -> None:
    """The two short ones."""
    assert plain(kits_json({"hall": ({BAR, STICK}, 2, 1)})) == {
        "version": 1,
        "kits": [{"id": "hall", "items": ["bar", "stick"], "drills": 2, "faults": 1}],
    }
    problem = Problem(file="f.md", line=3, code="c", message="m", help="h")
    assert plain(problems_json([problem])) == {
        "version": 1,
        "problems": [{"file": "f.md", "line": 3, "code": "c", "message": "m", "help": "h"}],
    }
