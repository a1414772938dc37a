"""The rules of a class read again, from the answer for programs, the class file and the entries alone.

`broken(answer, file, library)` lists every rule that a planned class breaks. Nothing of kb is used: the class file and
the entries are read with PyYAML, times and gear are reckoned anew.
"""

from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any

import yaml

__all__ = ["broken", "entry_of", "seconds_of"]

SHIPPED = Path(__file__).resolve().parents[1] / "drills"
LOADS = ("none", "stick", "light", "working")
TICK, CHANGE_OVER, REP = 30, 30, 4
DOING = ("work", "check", "loading")

Json = dict[str, Any]


@cache
def entry_of(kind: str, name: str, library: Path = SHIPPED) -> Json:
    """The front matter of an entry; kind is `drill` or a folder."""
    folders = [kind] if kind != "drill" else ["snatch", "clean", "jerk", "squat", "pull", "mobility"]
    for folder in folders:
        path = library / folder / f"{name}.md"
        if path.exists():
            found: Json = yaml.safe_load(path.read_text("utf-8").split("---\n")[1])
            return found
    raise KeyError(name)


def _round(dose: Json) -> int:
    one = dose.get("reps", 0) * (sum(dose["tempo"]) if dose.get("tempo") else REP) + dose.get("hold_s", 0)
    return int(one * dose.get("sides", 1))


def seconds_of(drill: Json, part: str) -> int:
    """A drill's time, s: change-over, setting up, and every round with the rests between, or one round of a check."""
    dose = drill["dose"]
    before = CHANGE_OVER + drill.get("set_up_s", 15)
    if part == "check":
        return int(before + _round(dose))
    if dose.get("every_s"):
        return int(before + dose["rounds"] * dose["every_s"])
    rounds = dose.get("rounds", 1)
    return int(before + rounds * _round(dose) + (rounds - 1) * dose.get("rest_s", 0))


def broken(answer: Json, file: Path) -> list[str]:
    """Every rule that the answer breaks, in words."""
    asked = yaml.safe_load(file.read_text("utf-8"))
    if [each["name"] for each in answer["lifters"]] != [each["name"] for each in asked["lifters"]]:
        return ["not everyone who comes has a card"]
    wrong: list[str] = []
    for rule in (
        _times,
        _waits,
        _gear,
        _order,
        _loads,
        _shown,
        _coaches,
        _watched,
        _partners,
        _lengths,
        _climbs,
        _groups,
        _without,
        _today,
        _strength,
        _more,
        _by_turns,
        _at_bar,
    ):
        wrong += rule(answer, asked)
    return wrong


def _named(answer: Json, name: str) -> Json:
    return next(each for each in answer["lifters"] if each["name"] == name)


def _times(answer: Json, asked: Json) -> list[str]:
    wrong = []
    for each in answer["lifters"]:
        now = answer["warm_up_s"]
        for slot in each["slots"]:
            if slot["start_s"] < now:
                wrong.append(f"{each['name']} is in two places at {slot['start_s']}")
            now = slot["end_s"]
            if slot["end_s"] <= slot["start_s"] or slot["end_s"] > 60 * asked["minutes"]:
                wrong.append(f"{each['name']}: {slot['start_s']} to {slot['end_s']} is no time of this class")
    return wrong


def _longest(answer: Json, asked: Json) -> int:
    """Three minutes, or what the file says; five where it doesn't, bars are fewer than lifters, and all keep them."""
    kept = not any("bar" in each["without"] for each in answer["lifters"])
    few = 0 < asked.get("gear", {}).get("bar", 0) < len(asked["lifters"])
    longest: int = asked.get("most_wait_s", 300 if kept and few else 180)
    return longest


def _waits(answer: Json, asked: Json) -> list[str]:
    """Nobody waits too long, and the idle time is what it is said to be."""
    wrong, total = [], 0
    for each in answer["lifters"]:
        now, idle = answer["warm_up_s"], 0
        for slot in each["slots"]:
            if slot["start_s"] - now > _longest(answer, asked):
                wrong.append(f"{each['name']} waits from {now} to {slot['start_s']}")
            idle += slot["start_s"] - now
            now = slot["end_s"]
        if idle != each["idle_s"]:
            wrong.append(f"{each['name']} is idle for {idle} s, not {each['idle_s']}")
        total += idle
    if total != answer["idle_s"]:
        wrong.append(f"all are idle for {total} s, not {answer['idle_s']}")
    if answer["optimal"] and answer["gap"] != 0:
        wrong.append("proved and yet a gap")
    return wrong


def _shared_gear(answer: Json, each: Json, slot: Json) -> list[str]:
    """The gear of a slot, the first one's where some take turns."""
    if slot["gear"] or not slot["shares"]:
        return list(slot["gear"])
    for other in (_named(answer, name) for name in slot["shares"]):
        theirs = _going_on(other) if slot["as"] == "more" else [*other["slots"], *other["strength"]]
        for twin in theirs:
            same = (twin["drill"], twin["load"]) == (slot["drill"], slot["load"])
            same = same and (slot["as"] != "more" or twin["end_s"] == slot["end_s"])
            if same and twin["gear"] and {each["name"], *slot["shares"]} == {other["name"], *twin["shares"]}:
                return list(twin["gear"])
    return []


def _going_on(each: Json) -> list[Json]:
    """What a lifter has more, as slots in order."""
    return [{**more, "as": "more", "with": None} for more in [each["more"], *each["then"]] if more]


def _begun_together(answer: Json, more: Json) -> int:
    """When the first of those who share what they go on with begins it: by turns, the others begin later."""
    return min(
        int(other["start_s"])
        for each in answer["lifters"]
        for other in _going_on(each)
        if other == more or (each["name"] in more["shares"] and other["drill"] == more["drill"])
        if other["end_s"] == more["end_s"]
    )


def _listed(each: Json) -> list[Json]:
    """A lifter's list, what strengthens after it, and what they have more."""
    return [*each["slots"], *each["strength"], *_going_on(each)]


def _ended(each: Json) -> int:
    """When a lifter has ended their list, and what strengthens after it."""
    return int([*each["slots"], *each["strength"]][-1]["end_s"])


def _everything(each: Json) -> list[Json]:
    """The same, and a turn at a bar that goes round, for which what they have more is laid aside."""
    return [*_listed(each), *([each["bar_turn"]] if each["bar_turn"] else [])]


def _at_bar(answer: Json, asked: Json) -> list[str]:
    """One round at a bar near the end, of what was met with a stick today: fast with a catch only
    what was named, done in full, at a training bar; a coach there."""
    wrong = []
    for each, said in zip(answer["lifters"], asked["lifters"], strict=True):
        turn = each["bar_turn"]
        if turn is None:
            continue
        entry = entry_of("drill", turn["drill"])
        met = [slot for slot in _done(each) if slot["drill"] == turn["drill"] and slot["load"] == "stick"]
        held = {*asked.get("known", []), *(said.get("holds") or [])}
        quick = entry.get("speed") == "full"
        quick = quick and (entry.get("catch", "none") != "none" or _is_new(each, turn, held))
        named = turn["drill"] in asked.get("today", []) and any(slot["as"] == "work" for slot in met)
        high = entry.get("catch", "none") in ("none", "standing", "power") and "training-bar" in turn["gear"]
        quick = quick and not (named and high)
        if not met or quick or turn["load"] != "light" or not {"bar", "training-bar"} & set(turn["gear"]):
            wrong.append(f"{each['name']} isn't ready for {turn['drill']} at a bar")
        if {"bar", "training-bar"} & {item for slot in _done(each) for item in _shared_gear(answer, each, slot)}:
            wrong.append(f"{each['name']} has had a bar")
        length, needs = turn["end_s"] - turn["start_s"], seconds_of(entry, "check")
        ends = each["slots"][-1]["end_s"] <= turn["start_s"] < turn["end_s"] <= 60 * asked["minutes"]
        if not ends or not needs <= length < needs + TICK:
            wrong.append(f"{each['name']} is at a bar from {turn['start_s']} to {turn['end_s']}")
        stays = [d for d in answer["coaches"] if d["does"] == "stay" and each["name"] in d["who"]]
        if not any(d["start_s"] <= turn["start_s"] and turn["end_s"] <= d["end_s"] for d in stays):
            wrong.append(f"{each['name']} is at a bar and no coach is")
    return wrong


def _is_new(each: Json, turn: Json, held: set[str]) -> bool:
    shown = {slot["drill"] for slot in each["slots"] if slot["as"] == "shown"}
    return turn["drill"] in shown and turn["drill"] not in held


def _strength(answer: Json, asked: Json) -> list[str]:
    """After the day's weight and before what there is more: what strengthens, in full, three at most, each once."""
    wrong = []
    for each, said in zip(answer["lifters"], asked["lifters"], strict=True):
        up = [slot for slot in each["strength"] if slot["as"] == "up"]
        ids = [slot["drill"] for slot in each["strength"] if slot["as"] != "up"]
        now = up[-1]["end_s"] if up else each["slots"][-1]["end_s"]
        wrong += _works_up(answer, each, said, up)
        if ids and not up and ("weight_kg" not in said or "fault" in said or each["slots"][-1]["load"] != "working"):
            wrong.append(f"{each['name']} strengthens without the day's weight")
        if len(ids) > 3 or len(set(ids)) < len(ids) or set(ids) & {slot["drill"] for slot in each["slots"]}:
            wrong.append(f"{each['name']}: {ids} is too much of it")
        for slot in each["strength"][len(up) :]:
            entry = entry_of("drill", slot["drill"])
            length, needs = slot["end_s"] - slot["start_s"], seconds_of(entry, "work")
            if entry["stage"] != "finish" or each["lift"] not in entry["lifts"]:
                wrong.append(f"{each['name']}: {slot['drill']} isn't for strength in this lift")
            if slot["start_s"] < now or slot["end_s"] > 60 * asked["minutes"] or not needs <= length < needs + TICK:
                wrong.append(f"{each['name']}: {slot['drill']} from {slot['start_s']} to {slot['end_s']}")
            if entry["dose"].get("rest_s", 0) < _round(entry["dose"]) * len(slot["shares"]):
                wrong.append(f"{each['name']}: {slot['drill']} leaves no time for turns")
            now = slot["end_s"]
        if each["more"] and each["more"]["start_s"] < now:
            wrong.append(f"{each['name']} has more before they are strong")
    return wrong


def _works_up(answer: Json, each: Json, said: Json, up: list[Json]) -> list[str]:
    """Who holds the lift and has no day's weight works up to one right after it: in turns, a coach's look at it."""
    wrong = []
    if not up:
        return wrong
    final, (slot, *others) = _done(each)[-1], up
    if others or said.get("bar") == "light" or "weight_kg" in said or slot["drill"] not in said.get("holds", []):
        wrong.append(f"{each['name']} works up to a weight and shouldn't")
    if final["drill"] != slot["drill"] or final["load"] != "light" or slot["start_s"] < each["slots"][-1]["end_s"]:
        wrong.append(f"{each['name']} works up before it was done at a light bar")
    people = 1 + len(slot["shares"])
    if (
        people > 4
        or slot["every_s"] < 120
        or slot["every_s"] < 30 + people * _round(entry_of("drill", slot["drill"])["dose"])
    ):
        wrong.append(f"{each['name']} has no time to load and rest on the way up")
    if not 4 <= slot["rounds"] <= 8 or slot["end_s"] - slot["start_s"] > slot["rounds"] * slot["every_s"]:
        wrong.append(f"{each['name']} has {slot['rounds']} rounds up")
    looks = [d for d in answer["coaches"] if d["does"] == "up" and each["name"] in d["who"]]
    if not any(slot["start_s"] + 120 <= d["start_s"] < d["end_s"] <= slot["end_s"] for d in looks):
        wrong.append(f"nobody looks at {each['name']} working up")
    if said.get("bar") == "racked" and "rack" not in _shared_gear(answer, each, slot):
        wrong.append(f"{each['name']} can't clean it, and has no rack")
    return wrong


def _more(answer: Json, asked: Json) -> list[str]:
    """After their own end, a drill of their list, never at the day's weight, so many rounds as fit; nobody is left out
    for whom what they ended with is free."""
    wrong = []
    end = 60 * asked["minutes"]
    for each in answer["lifters"]:
        last, ids = _ended(each), [slot["drill"] for slot in _done(each)]
        if each["more"] is None:
            final = _done(each)[-1]
            partner = "partner" in entry_of("drill", final["drill"]).get("equipment", [])
            opens = entry_of("drill", final["drill"])["stage"] == "prepare"
            if end - last >= 180 and not partner and not opens and not _contested(answer, asked, each, final, end):
                wrong.append(f"{each['name']} stands about from {last} to {end}")
        for more in _going_on(each):
            entry = entry_of("drill", more["drill"])
            if not last <= more["start_s"] < more["end_s"] <= end or end - last < 180:
                wrong.append(f"{each['name']} has more from {more['start_s']} to {more['end_s']}")
            if more["drill"] not in ids or entry["stage"] == "prepare" or more["load"] == "working":
                wrong.append(f"{each['name']} goes on with what isn't theirs, or at the day's weight")
            if more["every_s"] < _round(entry["dose"]) * (1 + len(more["shares"])) or more["rounds"] < 1:
                wrong.append(f"{each['name']} has no rest")
            if more["rounds"] * more["every_s"] > more["end_s"] - more["start_s"]:
                wrong.append(f"{each['name']}: {more['rounds']} rounds don't fit")
            wrong += _more_by_turns(answer, each, more)
            last = more["end_s"]
    return wrong


def _more_by_turns(answer: Json, each: Json, more: Json) -> list[str]:
    """Up to four take turns to the same end, at the same place, and each names all the others."""
    wrong = []
    if len(more["shares"]) > 3:
        wrong.append(f"{each['name']} is one of too many at a bar")
    for name in more["shares"]:
        keys = ("drill", "end_s", "station", "load")
        theirs = [m for m in _going_on(_named(answer, name)) if all(m[key] == more[key] for key in keys)]
        if not any({name, *m["shares"]} == {each["name"], *more["shares"]} for m in theirs):
            wrong.append(f"{each['name']} takes turns with {name}, who doesn't")
    return wrong


def _by_turns(answer: Json, asked: Json) -> list[str]:
    """Over eight minutes other drills of the list come by turns with what there is more, none heavier than it was.

    Who practises what they hold may do at a light bar what they checked with a stick.
    """
    wrong = []
    for each, said in zip(answer["lifters"], asked["lifters"], strict=True):
        held = "fault" not in said and _holds_all(answer, said)
        for more in _going_on(each):
            span = more["rounds"] * more["every_s"]
            for other in more["by_turns"]:
                mine = [slot for slot in _done(each) if slot["drill"] == other["drill"]]
                most = max((LOADS.index(slot["load"]) for slot in mine), default=-1)
                most = max(most, LOADS.index("light")) if held and most > 0 else most
                if LOADS.index(other["load"]) > min(most, LOADS.index("light")) or other["drill"] == more["drill"]:
                    wrong.append(f"{each['name']} changes to {other['drill']}")
                if other["every_s"] < _round(entry_of("drill", other["drill"])["dose"]) * (1 + len(more["shares"])):
                    wrong.append(f"{each['name']} has no rest in {other['drill']}")
                span += other["rounds"] * other["every_s"]
            if bool(more["by_turns"]) != bool(more["change_s"]) or span > more["end_s"] - more["start_s"]:
                wrong.append(f"{each['name']}: the drills by turns don't fit")
            if more["by_turns"] and more["end_s"] - _begun_together(answer, more) <= 450:
                wrong.append(f"{each['name']} changes drills for no reason")
    return wrong


def _contested(answer: Json, asked: Json, each: Json, final: Json, end: int) -> bool:
    """Whether something of a slot's is all out at some minute from its end on."""
    have = {item: n for item, n in asked.get("gear", {}).items() if n != "plenty"}
    for item in _shared_gear(answer, each, final):
        for now in range(_ended(each), end, TICK):
            out = 0
            for other in answer["lifters"]:
                for slot in _listed(other):
                    busy = slot["as"] in (*DOING, "more") and slot["start_s"] <= now < slot["end_s"]
                    out += busy and item in _shared_gear(answer, other, slot)
            if item in have and out >= have[item]:
                return True
    return False


def _gear(answer: Json, asked: Json) -> list[str]:
    """At no minute is more out than there is; two at one thing have said so, and stand at the same station."""
    wrong: list[str] = []
    have = {item: n for item, n in asked.get("gear", {}).items() if n != "plenty"}
    said = {use["item"]: use for use in answer["gear"]}
    if {item: use["have"] for item, use in said.items()} != have:
        wrong.append("what there is isn't what the file says")
    peaks = dict.fromkeys(have, 0)
    last = max(slot["end_s"] for each in answer["lifters"] for slot in _everything(each))
    for now in range(answer["warm_up_s"], last, TICK):
        sets: dict[str, set[frozenset[str]]] = {}
        places: dict[str, set[frozenset[str]]] = {}
        for each in answer["lifters"]:
            for slot in _everything(each):
                if not slot["start_s"] <= now < slot["end_s"] or slot["as"] not in (*DOING, "more"):
                    continue
                who = frozenset([each["name"], *slot["shares"]])
                for item in _shared_gear(answer, each, slot):
                    sets.setdefault(item, set()).add(who)
                if slot["station"][-1].isdigit() and not slot["with"]:
                    places.setdefault(slot["station"], set()).add(who)
        for item, out in sets.items():
            if item in have:
                peaks[item] = max(peaks[item], len(out))
                if len(out) > have[item]:
                    wrong.append(f"at {now} s {len(out)} {item} are out, and there are {have[item]}")
        wrong += [f"at {now} s more than one unit is at {at}" for at, who in places.items() if len(who) > 1]
    wrong += [
        f"{item}: {peaks[item]} out at most, not {said[item]['peak']}"
        for item in have
        if item in said and peaks[item] != said[item]["peak"]
    ]
    return wrong


def _done(each: Json) -> list[Json]:
    """A lifter's own drills in order, each once: the bar's loading belongs to what follows."""
    return [slot for slot in each["slots"] if slot["as"] in ("work", "check")]


def _order(answer: Json, asked: Json) -> list[str]:
    """What a drill is built on comes before it, if the lifter does both; the lift comes last for who has a fault."""
    wrong = []
    for each, said in zip(answer["lifters"], asked["lifters"], strict=True):
        ids = [slot["drill"] for slot in _done(each)]
        first = {drill: ids.index(drill) for drill in ids}
        for drill in first:
            entry = entry_of("drill", drill)
            for group in [*entry.get("prerequisites", []), *[[part] for part in entry.get("made_of", [])]]:
                members = [group] if isinstance(group, str) else group
                there = [member for member in members if member in first]
                if there and all(first[member] > first[drill] for member in there):
                    wrong.append(f"{each['name']}: {drill} comes before {there}")
                # who holds the lift, or all of today's drills, holds what they are built on
                able = "fault" in said or _holds_all(answer, said)
                if not there and not able and not set(members) & _held(said["holds"]):
                    wrong.append(f"{each['name']}: {drill} needs one of {members}")
        loads = [LOADS.index(slot["load"]) for slot in _done(each) if slot["drill"] == ids[-1]]
        if loads != sorted(loads):
            wrong.append(f"{each['name']}: {ids[-1]} gets lighter")
        if each["later"]:
            continue  # the rest of the chain is for another day
        if "fault" in said and not ids[-1].startswith("full-"):
            wrong.append(f"{each['name']} doesn't end in the lift")
        if ("weight_kg" in said) != any(slot["load"] == "working" for slot in _done(each)):
            wrong.append(f"{each['name']}: the day's weight is lost, or comes from nowhere")
    return wrong


def _held(holds: list[str]) -> set[str]:
    """What is held, and what that is built on."""
    held, left = set[str](), list(holds)
    while left:
        drill = left.pop()
        if drill not in held:
            held.add(drill)
            entry = entry_of("drill", drill)
            for group in [*entry.get("prerequisites", []), *entry.get("made_of", [])]:
                left += [group] if isinstance(group, str) else group
    return held


def _holds_all(answer: Json, said: Json) -> bool:
    holds, today = set(said.get("holds") or []), set(answer["today"])
    return any(each.startswith("full-") for each in holds) or bool(today and today <= holds)


def _today(answer: Json, asked: Json) -> list[str]:
    """Everyone who learns does each drill of `today`, or it is said that it is left for another day."""
    wrong = []
    named = asked.get("today", [])
    if answer["today"] != ([named] if isinstance(named, str) else named):
        wrong.append("today isn't what the file says")
    for each, said in zip(answer["lifters"], asked["lifters"], strict=True):
        learns = "fault" not in said and not any(held.startswith("full-") for held in said["holds"])
        goals = [goal for goal in answer["today"] if each["lift"] in entry_of("drill", goal)["lifts"]]
        if not learns and each["today_left"]:
            wrong.append(f"{each['name']} leaves what nobody asked for")
        for goal in goals if learns else []:
            slots = [slot for slot in _done(each) if slot["drill"] == goal]
            if bool(slots) == (goal in each["today_left"]):
                wrong.append(f"{each['name']}: {goal} is neither done nor left, or both")
            loads = [LOADS.index(slot["load"]) for slot in slots]
            if loads != sorted(loads) or LOADS.index("working") in loads:
                wrong.append(f"{each['name']}: {goal} gets lighter, or is done at working weight")
    return wrong


def _loads(answer: Json, _asked: Json) -> list[str]:
    """Each drill is done with what it needs, or a stand-in, at a load that both allow."""
    wrong = []
    for each in answer["lifters"]:
        for slot in _everything(each):
            if slot["as"] not in (*DOING, "more"):
                continue
            entry, gear = entry_of("drill", slot["drill"]), _shared_gear(answer, each, slot)
            load = LOADS.index(slot["load"])
            span = entry.get("load", "none")
            least, most = (span, span) if isinstance(span, str) else span
            if not LOADS.index(least) <= load <= LOADS.index(most):
                wrong.append(f"{each['name']}: {slot['drill']} at {slot['load']}")
            for item in entry.get("equipment", []):
                if item in gear or item == "partner":
                    continue
                served = [s for s in entry_of("equipment", item).get("stand_ins", []) if s["item"] in gear]
                caps = [LOADS.index(s.get("caps", {}).get("load", "working")) for s in served]
                if not caps or max(caps) < load:
                    wrong.append(f"{each['name']}: {slot['drill']} at {slot['load']} without {item}")
    return wrong


def _shown(answer: Json, asked: Json) -> list[str]:
    """Each drill that somebody doesn't know is shown once, to all who need it, before they do it."""
    wrong = []
    shown: dict[str, set[tuple[int, int]]] = {}
    for each in answer["lifters"]:
        for slot in each["slots"]:
            if slot["as"] == "shown":
                shown.setdefault(slot["drill"], set()).add((slot["start_s"], slot["end_s"]))
                if slot["end_s"] - slot["start_s"] < entry_of("drill", slot["drill"]).get("teach_s", 60):
                    wrong.append(f"{slot['drill']} is shown too quickly")
    wrong += [f"{drill} is shown {len(times)} times" for drill, times in shown.items() if len(times) > 1]
    for each, said in zip(answer["lifters"], asked["lifters"], strict=True):
        knows = {*asked.get("known", []), *(said.get("holds") or [])}
        seen = {slot["drill"]: slot["end_s"] for slot in each["slots"] if slot["as"] == "shown"}
        for slot in _done(each):
            able = "fault" in said and slot["drill"].startswith("full-")
            able = able or ("fault" not in said and _holds_all(answer, said))
            if slot["drill"] not in knows and not able and seen.get(slot["drill"], 10**9) > slot["start_s"]:
                wrong.append(f"{each['name']} does {slot['drill']} and hasn't been shown it")
    for drill, times in shown.items():
        duties = [d for d in answer["coaches"] if d["does"] == "show" and d["drill"] == drill]
        if [(d["start_s"], d["end_s"]) for d in duties] != sorted(times):
            wrong.append(f"no coach shows {drill} when it is shown")
        end = max(end for _, end in times)
        starts = [
            next(slot["start_s"] for slot in _done(each) if slot["drill"] == drill)
            for each in answer["lifters"]
            if any(s["as"] == "shown" and s["drill"] == drill for s in each["slots"])
            and any(slot["drill"] == drill for slot in _done(each))
        ]
        if min(starts) > end + 60:
            wrong.append(f"{drill} is shown long before anyone does it")
    return wrong


def _coaches(answer: Json, asked: Json) -> list[str]:
    """Nobody coaches in two places, and there are no more coaches than come."""
    wrong = []
    for n in {duty["coach"] for duty in answer["coaches"]}:
        mine = sorted((d["start_s"], d["end_s"]) for d in answer["coaches"] if d["coach"] == n)
        wrong += [f"coach {n} is in two places" for a, b in pairwise(mine) if b[0] < a[1]]
        if not 1 <= n <= asked.get("coaches", 1):
            wrong.append(f"there is no coach {n}")
    return wrong


def _watched(answer: Json, _asked: Json) -> list[str]:
    """A coach stands by at the first full depth under a bar and at the first try of the day's weight."""
    wrong = []
    for each in answer["lifters"]:
        done = _done(each)
        deep = next((s for s in done if s["watched"]), None)
        heavy = next((s for s in done if s["load"] == "working"), None)
        first = next(
            (
                s
                for s in done
                if s["load"] in ("light", "working") and entry_of("drill", s["drill"]).get("catch") == "full"
            ),
            None,
        )
        if first is not None and (deep is None or deep["start_s"] > first["start_s"]):
            wrong.append(f"{each['name']}: nobody sees the first {first['drill']}")
        for slot in filter(None, (heavy, *[s for s in done if s["watched"]])):
            at = slot["start_s"] + CHANGE_OVER
            if (
                not any(
                    d["does"] == "watch" and each["name"] in d["who"] and d["start_s"] <= at < d["end_s"]
                    for d in answer["coaches"]
                )
                and not slot["shares"]
            ):
                wrong.append(f"{each['name']}: nobody stands by at {at} s")
    return wrong


def _partners(answer: Json, _asked: Json) -> list[str]:
    """A drill with a partner makes two lifters busy."""
    wrong = []
    for each in answer["lifters"]:
        for slot in each["slots"]:
            if slot["as"] not in ("work", "check") or "partner" not in entry_of("drill", slot["drill"])["equipment"]:
                continue
            other = _named(answer, slot["with"]) if slot["with"] else {"slots": []}
            twin = (slot["start_s"], slot["end_s"], slot["drill"], "helps", each["name"])
            found = [(s["start_s"], s["end_s"], s["drill"], s["as"], s["with"]) for s in other["slots"]]
            if twin not in found:
                wrong.append(f"{each['name']} has no partner for {slot['drill']}")
    return wrong


def _alike(asked: Json, slot: Json, one: str, other: str) -> bool:
    """Whether two at a bar lift the same at it: else each has the bar for themselves when it is at their weight."""
    kg = {said["name"]: said.get("weight_kg") for said in asked["lifters"]}
    return slot["load"] != "working" or kg[one] == kg[other]


def _climbs(answer: Json, asked: Json) -> list[str]:
    """A shared bar only goes up: whose day's weight is less has done it before whose is more begins."""
    wrong = []
    kg = {said["name"]: said.get("weight_kg") for said in asked["lifters"]}
    heavy = {each["name"]: [s for s in each["slots"] if s["as"] == "work" and s["load"] == "working"]
             for each in answer["lifters"]}  # fmt: skip
    for name, slots in heavy.items():
        for slot in slots:
            for other in slot["shares"]:
                theirs = heavy[other][0]
                if kg[other] < kg[name] and theirs["end_s"] > slot["start_s"]:
                    wrong.append(f"{other} lifts {kg[other]} after the bar was at {kg[name]} for {name}")
    return wrong


def _lengths(answer: Json, asked: Json) -> list[str]:
    """Each drill gets its time, to the half minute; two take turns only where each rests while the other works."""
    wrong = []
    for each in answer["lifters"]:
        for slot in _done(each):
            entry = entry_of("drill", slot["drill"])
            length, needs = slot["end_s"] - slot["start_s"], seconds_of(entry, slot["as"])
            swapped = bool(slot["with"]) and slot["start_s"] not in _begins(answer, slot)
            spare = TICK + (CHANGE_OVER + entry.get("set_up_s", 15) if swapped else 0)
            least = needs - (CHANGE_OVER + entry.get("set_up_s", 15) if swapped else 0)
            if length < least or length >= needs + spare:
                wrong.append(f"{each['name']}: {slot['drill']} gets {length} s and takes {needs}")
            dose = entry["dose"]
            rest = dose.get("every_s", 0) - _round(dose) if dose.get("every_s") else dose.get("rest_s", 0)
            turns = [name for name in slot["shares"] if _alike(asked, slot, each["name"], name)]
            if len(slot["shares"]) > 3 or (slot["as"] == "work" and rest < _round(dose) * len(turns) and turns):
                wrong.append(f"{each['name']}: {slot['drill']} leaves no time for turns")
    return wrong


def _begins(answer: Json, slot: Json) -> set[int]:
    """When a helped drill begins for the first of two: the second needs no change-over any more."""
    if slot["with"] is None:
        return set()
    other = _named(answer, slot["with"])
    own = [s for s in other["slots"] if s["drill"] == slot["drill"] and s["as"] in ("work", "check")]
    return set() if own and own[0]["start_s"] < slot["start_s"] else {slot["start_s"]}


def _groups(answer: Json, asked: Json) -> list[str]:
    """Those of a group do the same drills up to the day's weight; no more groups run than coaches can run.

    Who holds what they end in practises it, and needs no coach to run that.
    """
    wrong, spans = [], {}
    chains: dict[int, set[tuple[str, ...]]] = {}
    for each in answer["lifters"]:
        ids = tuple(slot["drill"] for slot in _done(each) if slot["load"] != "working")
        chains.setdefault(each["group"], set()).add(ids)
        own = [slot for slot in each["slots"] if slot["as"] in DOING]
        said = next(lifter for lifter in asked["lifters"] if lifter["name"] == each["name"])
        if own[-1]["drill"] in said.get("holds", []):
            continue
        first, last = spans.get(each["group"], (10**9, 0))
        spans[each["group"]] = (min(first, own[0]["start_s"]), max(last, own[-1]["end_s"]))
    wrong += [f"group {n} does different drills" for n, found in chains.items() if len(found) > 1]
    for now in range(0, 60 * asked["minutes"], TICK):
        running = sum(first <= now < last for first, last in spans.values())
        if running > 2 * asked.get("coaches", 1):
            wrong.append(f"at {now} s {running} chains run")
    return wrong


def _without(answer: Json, asked: Json) -> list[str]:
    """Who leaves a thing to others never has it, and nobody who needs the day's weight does; it is there, and short."""
    wrong = []
    have = asked.get("gear", {})
    for each, said in zip(answer["lifters"], asked["lifters"], strict=True):
        used = {item for slot in _listed(each) for item in _shared_gear(answer, each, slot)}
        wrong += [f"{each['name']} does without {item} and has it" for item in used & set(each["without"])]
        wrong += [
            f"{each['name']} leaves {item} and lifts {said['weight_kg']}"
            for item in each["without"][:1]
            if "weight_kg" in said
        ]
        wrong += [
            f"{item} goes round"
            for item in each["without"]
            if not 0 < have.get(item.replace("-", " "), have.get(item, 0)) < len(asked["lifters"])
        ]
    return wrong
