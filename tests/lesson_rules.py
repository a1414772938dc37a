"""The laws of kb/docs/plan.md on lessons, read again: what is wrong with some, judged from their JSON and the drills.

Nothing of kb/ask/plan is used but the warm-up's minutes, so that program and tests can disagree.
"""

from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import Any

from kb import dials
from kb.ask.plan.weeks import warm_up
from kb.ask.shelf import Shelf
from kb.kit import fit
from kb.terms import Drill, DrillId, ItemId, Load, Speed, Stage

__all__ = ["broken_lesson_rules"]

MOST_CHECKED, MOST_MOVING, LEFT_OPEN, MOST_RAISED = 3, 4, 5, 10


def _moves(drill: Drill) -> bool:
    return drill.stage is not Stage.PREPARE and drill.speed is not Speed.HELD


def _far(shelf: Shelf, drill: Drill) -> tuple[bool, int]:
    """How far a movement is from the whole lift; what isn't put together at full speed comes after all that is."""
    whole = drill.stage in (Stage.JOIN, Stage.WHOLE) and drill.speed is Speed.FULL and drill.load[0] <= Load.STICK
    if drill.id == shelf.lift.drill:
        return False, -1
    return not whole, dials.step(shelf.dials[drill.id], shelf.dials[shelf.lift.drill], dials.spans(shelf.lift))


def broken_lesson_rules(
    answer: Mapping[str, Any],
    shelf: Shelf,
    have: frozenset[ItemId],
    held: Collection[DrillId],
    texts: Mapping[str, Mapping[str, str]],
    lessons: int,
) -> list[str]:
    """What is wrong, as sentences; nothing if nothing is."""
    found: list[str] = []
    known, out = set(held), set[str]()
    if len(answer["sessions"]) != lessons:
        found.append(f"{len(answer['sessions'])} lessons and not {lessons}")
    last: Sequence[str] = ()
    for session in answer["sessions"]:
        found += [f"{session['n']}: {each}" for each in _minutes(answer, session)]
        found += [f"{session['n']}: {each}" for each in _counts(answer, session, shelf, last)]
        before = set(known)
        for line in session["drills"]:
            found += [f"{session['n']}: {each}" for each in _line(line, shelf, have, known, before)]
            found += [f"{session['n']}: {each}" for each in _way_out(line, shelf, texts, out)]
            known.add(line["id"])
        found += [f"{session['n']}: {each}" for each in _end(session, shelf, have, known)]
        last = [line["id"] for line in session["drills"] if line["as"] == "new"] or last
    return found


def _minutes(answer: Mapping[str, Any], session: Mapping[str, Any]) -> Iterator[str]:
    took = session["warm_up"] + sum(line["minutes"] for line in session["drills"])
    opened = sum(line["minutes"] for line in session["drills"] if line["as"] == "open")
    if took != session["minutes"] or took + session["left"] != answer["minutes"]:
        yield f"{took} min and {session['left']} left are not {answer['minutes']}"
    if session["left"] < 0:
        yield "longer than it may be"
    if session["warm_up"] + opened < min(warm_up(answer["minutes"]), MOST_RAISED) or session["warm_up"] < LEFT_OPEN:
        yield "not enough warm-up"


def _counts(answer: Mapping[str, Any], session: Mapping[str, Any], shelf: Shelf, last: Sequence[str]) -> Iterator[str]:
    new = [line["id"] for line in session["drills"] if line["as"] == "new"]
    if len(new) > answer["most_new"] or len(set(new)) != len(new):
        yield f"{len(new)} drills are new"
    if sum(_moves(shelf.drills[each]) for each in new) > min(MOST_MOVING, answer["most_new"]):
        yield "too much that is new moves"
    checks = [line["id"] for line in session["drills"] if line["as"] == "check"]
    if len(checks) > MOST_CHECKED or not set(checks) <= set(last):
        yield f"looks again at {checks}, of {last}"
    if checks != [each for each in last if each in checks]:
        yield "looks again in another order than it was shown"


def _line(
    line: Mapping[str, Any], shelf: Shelf, have: frozenset[ItemId], known: Collection[str], before: Collection[str]
) -> Iterator[str]:
    drill = shelf.drills[line["id"]]
    fitted = fit(drill, have, shelf.items)
    if fitted is None:
        yield f"{drill.id} can't be done with what is there"
        return
    for group in drill.groups:
        if not set(group) & set(known):
            yield f"{drill.id} comes before any of {group}"
    load = Load[(line["load"] or "none").upper()]
    if load > Load.STICK and line["as"] not in ("lift", "finish"):
        yield f"{drill.id} is loaded at once"
    if load > min(fitted.load, drill.load[1], Load.LIGHT):
        yield f"{drill.id} is too heavy"
    if line["as"] == "finish" and load > Load.STICK and not all(set(group) & set(before) for group in drill.groups):
        yield f"{drill.id} is loaded on the day that what it stands on was shown"
    easier = line["if_not"]
    if easier is not None:
        if easier["id"] not in {each.drill for each in drill.regressions}:
            yield f"{easier['id']} isn't an easier {drill.id}"
        if fit(shelf.drills[easier["id"]], have, shelf.items) is None:
            yield f"{easier['id']} can't be done with what is there"


def _way_out(
    line: Mapping[str, Any], shelf: Shelf, texts: Mapping[str, Mapping[str, str]], out: set[str]
) -> Iterator[str]:
    """Nothing is lifted with a bar before its lift's way out was practised."""
    drill = shelf.drills[line["id"]]
    if line["as"] == "miss":
        out |= set(drill.lifts)
    elif line["bar"] is not None and "Miss" in texts[drill.id] and not set(drill.lifts) & out:
        yield f"{drill.id} with a bar before the way out"


def _end(session: Mapping[str, Any], shelf: Shelf, have: frozenset[ItemId], known: Collection[str]) -> Iterator[str]:
    """What strengthens aside, the last drill is the furthest movement known; and the minutes are used."""
    fits = shelf.fits(have)
    moving = [
        shelf.drills[DrillId(each)]
        for each in known
        if each in fits and shelf.drills[DrillId(each)].stage in (Stage.SEGMENT, Stage.JOIN, Stage.WHOLE)
    ]
    lines = [line for line in session["drills"] if line["as"] != "finish"]
    shown_only_to_strengthen = {line["id"] for line in session["drills"] if line["as"] == "finish"}
    moving = [each for each in moving if each.id not in shown_only_to_strengthen and each.load[0] <= Load.STICK]
    if moving:
        least = min(_far(shelf, each) for each in moving)
        if not lines or _far(shelf, shelf.drills[lines[-1]["id"]]) != least or lines[-1]["id"] != session["end"]:
            yield f"ends with {lines[-1]['id'] if lines else 'nothing'}"
        if session["left"] > LEFT_OPEN and sum(line["as"] == "lift" for line in lines) == 0:
            yield f"{session['left']} min are left"
