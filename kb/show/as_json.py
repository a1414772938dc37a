"""Answers for programs: each question's answer as plain JSON values, in the shapes of kb/docs/json.md.

One function an answer. Every shape has `version`; keys are only ever added.
"""

from collections.abc import Collection, Iterable, Mapping
from typing import TYPE_CHECKING, Any

from kb.ask.tells import decide
from kb.plain import to_plain
from kb.terms import Stage

if TYPE_CHECKING:
    # only for their names: a question imports no more than it needs
    from kb.ask.chain import Chain
    from kb.ask.find import Findings, Hit
    from kb.ask.path import Path, PathEntry
    from kb.ask.rehearse import Rehearsal
    from kb.ask.route import Entry, Route
    from kb.ask.swap import Swap
    from kb.ask.towards import Toward
    from kb.dials import Change, Dials
    from kb.errors import Problem
    from kb.terms import Drill, DrillId, Lift, Tell

__all__ = [
    "VERSION",
    "alone_json",
    "chain_json",
    "find_json",
    "kits_json",
    "no_chain_json",
    "no_path_json",
    "path_json",
    "problems_json",
    "show_json",
    "swap_json",
]

VERSION = 1
"""The version of every shape."""

Json = dict[str, Any]


def _named(drill: "Drill") -> Json:
    return {"id": drill.id, "name": drill.name}


def find_json(findings: "Findings") -> Json:
    """What was found for a coach's words; with a caution both lists are empty, unless the rest may be answered."""

    def hit(found: "Hit") -> Json:
        return {"id": found.id, "name": found.name, "lifts": list(found.lifts), "score": found.score}

    return {
        "version": VERSION,
        "caution": findings.caution,
        "may_clear": findings.may_clear,
        "faults": [hit(found) for found in findings.faults],
        "drills": [{"id": found.id, "name": found.name, "score": found.score} for found in findings.drills],
    }


def show_json(kind: str, entry: object) -> Json:
    """An entry as stored, with its kind."""
    return {"version": VERSION, "kind": kind, **to_plain(entry)}


def _tell(tell: "Tell") -> Json:
    return {
        "do": tell.do,
        "look": tell.look,
        "seconds": tell.seconds,
        "drill": tell.drill,
        "yes": list(tell.yes),
        "no": list(tell.no),
    }


def _step(size: int | None, changes: "Iterable[Change]") -> Json | None:
    if size is None:
        return None
    turned = [{"dial": change.dial, "from": change.before, "to": change.after} for change in changes]
    return {"size": size, "changes": turned}


def _reach(stage: Stage, dials: "Dials", lift: "Lift") -> list[str] | None:
    return None if stage is Stage.PREPARE else [lift.points[dials.first], lift.points[dials.last]]


def _entry(entry: "Entry", lift: "Lift") -> Json:
    drill, dials = entry.drill, entry.dials
    prepares = drill.stage is Stage.PREPARE
    return {
        **_named(drill),
        "stage": drill.stage.word,
        "as": "work" if entry.work else "check",
        "reach": _reach(drill.stage, dials, lift),
        "leaves_out": [point for n, point in enumerate(lift.points) if dials.left_out >> n & 1],
        "speed": None if prepares else dials.speed.word,
        "load": None if prepares else entry.load.word,
        "catch": None if prepares else dials.catch.word,
        "aid": list(drill.aid),
        "cue": next(iter(drill.cues), None),
        "cautions": list(drill.cautions),
        "seconds": entry.seconds,
        "addresses": list(entry.addresses),
        "tests": entry.tests,
        "gear": [{"item": gear.item, "using": gear.using} for gear in entry.gear],
        "standard": to_plain(drill.standard),
        "step": _step(entry.step, entry.changes),
    }


def alone_json(entry: "Entry", lift: "Lift") -> Json:
    """A drill that stands in no chain: as one of a route, with its dose and for whom it isn't."""
    drill, share = entry.drill, entry.drill.load_from
    return {
        **_entry(entry, lift),
        "dose": to_plain(drill.dose),
        "load_from": to_plain(share) if share else None,
        "not_for": drill.not_for,
    }


def _route(route: "Route", lift: "Lift") -> Json:
    return {
        "cost": route.cost,
        "optimal": route.optimal,
        "gap": round(route.gap, 4),
        "seconds": route.seconds,
        "sittings": [list(sitting) for sitting in route.sittings],
        "drills": [_entry(entry, lift) for entry in route.entries],
    }


def chain_json(chain: "Chain", kit: str | None, first: str = "") -> Json:
    """A chain; `kit` is None where the question listed what there is, `first` what is to be looked at before it.

    The drills' cues come from their text, so the chain's drills must have it (`kb.ask.read.with_text`).
    """
    matter = chain.matter
    earlier = None
    if matter.worked.id != matter.fault.id:
        worked, cause = matter.worked, matter.worked_cause
        earlier = {"fault": worked.id, "cause": cause.id, "throughout": cause.throughout, "gone": worked.gone}
    return {
        "version": VERSION,
        "fault": matter.fault.id,
        "cause": matter.cause.id,
        "lift": matter.shelf.lift.id,
        "load": matter.load.word,
        "kit": kit,
        "earlier": earlier,
        **({"first": first} if first else {}),
        "throughout": matter.cause.throughout,
        "gone": matter.fault.gone,
        "tells": [_tell(tell) for tell in decide(matter.fault).tells],
        "other_causes": [{"id": c.id, "kind": c.kind} for c in matter.fault.causes if c.id != matter.cause.id],
        "finish": [_named(drill) for drill in chain.finish],
        "strengthen": [alone_json(entry, matter.shelf.lift) for entry in chain.strengthen],
        "routes": [_route(route, matter.shelf.lift) for route in chain.routes],
    }


def no_chain_json(why: str, rehearsal: "Rehearsal | None", session: str | None = None, *, lift: "Lift") -> Json:
    """Why there is no chain, what can be rehearsed, and what would open one; `session` is a command that makes one.

    `rehearse` is in the order to do it in, `rehearse_in_full` its first as they are to be done: their drills must have
    their text. The session is one of these, or one that gives each drill less where it is time that is short.
    An opener names one item, or `items` that open one only together, or a prerequisite.
    """
    openers: list[Json] = []
    for opener in rehearsal.would_open if rehearsal else ():
        if opener.prerequisite is not None:
            openers.append({"prerequisite": opener.prerequisite})
        elif len(opener.items) == 1:
            openers.append({"item": opener.items[0]})
        else:
            openers.append({"items": list(opener.items)})
    return {
        "version": VERSION,
        "routes": [],
        "why": why,
        "rehearse": [_named(drill) for drill in rehearsal.drills] if rehearsal else [],
        "rehearse_in_full": [alone_json(entry, lift) for entry in rehearsal.entries] if rehearsal else [],
        "would_open": openers,
        "session": session,
    }


def path_json(path: "Path", kit: str | None, gateways: "Collection[DrillId]") -> Json:
    """A path; a gateway is a drill that every way from nothing to the lift passes."""
    lift = path.shelf.lift

    def entry(each: "PathEntry") -> Json:
        return {
            **_named(each.drill),
            "stage": each.drill.stage.word,
            "reach": _reach(each.drill.stage, each.dials, lift),
            "load": None if each.drill.stage is Stage.PREPARE else each.load.word,
            "gateway": each.drill.id in gateways,
            "step": _step(each.step, each.changes),
        }

    return {
        "version": VERSION,
        "lift": lift.id,
        "kit": kit,
        "cost": path.cost,
        "optimal": path.optimal,
        "gap": round(path.gap, 4),
        "drills": [entry(each) for each in path.entries],
    }


def no_path_json(why: str, lift: str, kit: str | None, found: "Collection[Toward]") -> Json:
    """Why a kit doesn't lead to a lift, and the path as far as it goes."""
    return {
        "version": VERSION,
        "lift": lift,
        "kit": kit,
        "drills": [],
        "why": why,
        "towards": [
            {
                **_named(each.drill),
                "stage": each.drill.stage.word,
                "load": None if each.drill.stage is Stage.PREPARE else each.load.word,
                "seconds": each.seconds,
                "gear": [{"item": gear.item, "using": gear.using} for gear in each.gear],
                "standard": to_plain(each.drill.standard),
            }
            for each in found
        ],
    }


def swap_json(swap: "Swap") -> Json:
    """What a drill comes to with what is there, what would do instead, and what one more item opens."""
    return {
        "version": VERSION,
        "drill": swap.drill.id,
        "doable": swap.doable,
        "using": {gear.item: gear.using for gear in swap.gear},
        "lost": list(swap.lost),
        "with_one": list(swap.with_one),
        "quiet": swap.ruled.quiet,
        "without": sorted(swap.ruled.without),
        "barred": list(swap.barred),
        "gently": [_named(drill) for drill in swap.gently],
        "easier": [{**_named(each.drill), "eases": each.eases, "than": each.than} for each in swap.easier],
        "turn_up": (swap.turned_up or swap.drill).turn_up or "",
        "turn_up_of": (swap.turned_up or swap.drill).id,
        "harder": [
            {**_named(each.drill), "eased": each.eased, "turned": [change.dial for change in each.turned]}
            for each in swap.harder
        ],
        "swaps": [
            {
                **_named(near.drill),
                "keeps": [*(f"works on {fault}" for fault in near.works_on), *near.keeps],
                "loses": [*(f"{fault} is not worked on" for fault in near.leaves), *near.loses],
                "distance": near.distance,
            }
            for near in swap.swaps
        ],
        "strength": [_named(drill) for drill in swap.strength],
        "one_more": [{"item": opens.item, "opens": list(opens.drills)} for opens in swap.one_more],
    }


def kits_json(kits: Mapping[str, tuple[Collection[str], int, int]]) -> Json:
    """Each kit's items, how many drills can be done with it, and how many faults one of them works on."""
    return {
        "version": VERSION,
        "kits": [
            {"id": kit, "items": sorted(items), "drills": drills, "faults": faults}
            for kit, (items, drills, faults) in kits.items()
        ],
    }


def problems_json(problems: "Iterable[Problem]") -> Json:
    """All that is wrong in a library."""
    return {
        "version": VERSION,
        "problems": [
            {
                "file": problem.file,
                "line": problem.line,
                "code": problem.code,
                "message": problem.message,
                "help": problem.help,
            }
            for problem in problems
        ],
    }
