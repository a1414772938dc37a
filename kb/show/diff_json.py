"""What differs between two libraries, for programs, in the shape of kb/docs/answers.md."""

from typing import TYPE_CHECKING, Any

from kb.show.as_json import VERSION

if TYPE_CHECKING:
    from kb.check.asked import PathTold, Told
    from kb.check.diff.answers import Change
    from kb.check.diff.diff import Diff
    from kb.check.diff.edges import Edge
    from kb.check.diff.entries import Changed

__all__ = ["diff_json"]

Json = dict[str, Any]


def _key(key: tuple[str, str]) -> Json:
    return {"kind": key[0], "id": key[1]}


def _changed(each: "Changed") -> Json:
    return {
        "kind": each.kind,
        "id": each.after,
        "was": each.before,
        "fields": [{"field": field.name, "from": field.before, "to": field.after} for field in each.fields],
        "sections": list(each.sections),
    }


def _edge(edge: "Edge") -> Json:
    return {"from": edge.start, "kind": edge.kind, "to": list(edge.end), "detail": edge.detail or None}


def _answer(answer: "Told | PathTold | None") -> Json | None:
    if answer is None:
        return None
    if not answer.drills:
        return {"drills": [], "why": answer.why}
    return {
        "cost": answer.cost,
        "seconds": answer.seconds,
        "sittings": getattr(answer, "sittings", 1),
        "optimal": answer.proved,
        "drills": [{"id": drill, "load": load.word} for drill, load in answer.drills],
    }


def _change(change: "Change") -> Json:
    said = {"fault": change.fault, "cause": change.cause} if change.fault else {}
    return {
        "lift": change.lift,
        **said,
        "kits": list(change.kits),
        "before": _answer(change.before),
        "after": _answer(change.after),
        "added": list(change.added),
        "dropped": list(change.dropped),
        "moved": list(change.moved),
        "reloaded": list(change.reloaded),
    }


def diff_json(found: "Diff", before: str, after: str) -> Json:
    """What differs between the libraries called `before` and `after`."""
    entries = found.entries
    return {
        "version": VERSION,
        "before": before,
        "after": after,
        "entries": {
            "added": [_key(each) for each in entries.added],
            "removed": [_key(each) for each in entries.removed],
            "renamed": [_changed(each) for each in entries.renamed],
            "changed": [_changed(each) for each in entries.changed],
        },
        "edges": {
            "added": [_edge(edge) for edge in found.edges.added],
            "removed": [_edge(edge) for edge in found.edges.removed],
        },
        "kits": list(found.kits),
        "asked": None if found.unasked else {"chains": found.asked[0], "paths": found.asked[1]},
        "unasked": found.unasked or None,
        "chains": [_change(change) for change in found.chains],
        "paths": [_change(change) for change in found.paths],
    }
