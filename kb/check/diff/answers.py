"""Which default questions are answered otherwise: chains and paths, with what came in, what went and what moved."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple, TypeVar

from kb.check.asked import PathTold, Told, matters, path_told, told
from kb.check.beside import Shelves, each, opened
from kb.check.diff.order import moved
from kb.check.diff.touched import Touched
from kb.make.library import Library
from kb.terms import DrillId, FaultId, LiftId

__all__ = ["Change", "Replies", "changes_between", "replies"]

Answer = Told | PathTold
Asked = tuple[str, str, str, str]
"""A question: lift, fault, cause and kit; for a path fault and cause are empty."""

Some = TypeVar("Some", Told, PathTold)


class Replies(NamedTuple):
    """A library's answers to the default questions that it was asked."""

    chains: tuple[Told, ...]
    paths: tuple[PathTold, ...]


class Change(NamedTuple):
    """A question that is answered otherwise, with each of `kits` alike.

    `before` or `after` is None where that library has no such question; where it has, but no answer to it, the
    answer has no drills and says why. Of two answers, the drills that came in, went, moved, or are done at another
    load.
    """

    lift: str
    fault: str
    cause: str
    kits: tuple[str, ...]
    before: Answer | None
    after: Answer | None
    added: tuple[str, ...] = ()
    dropped: tuple[str, ...] = ()
    moved: tuple[str, ...] = ()
    reloaded: tuple[str, ...] = ()


def replies(library: Library, kits: tuple[str, ...], about: Touched) -> Replies:
    """Ask a library without structural problems its default questions about some lifts and faults."""
    asked = [
        (fault.id, kits, tuple(lift for lift in fault.lifts if fault.id in about.faults or lift in about.lifts))
        for fault in library.faults.values()
    ]
    with opened(library) as catalogue:
        chains = each(catalogue, _chains, [item for item in asked if item[2]])
        paths = each(catalogue, _path, [(lift, kit) for lift in library.lifts if lift in about.lifts for kit in kits])
    return Replies(tuple(one for some in chains for one in some), tuple(paths))


def _chains(shelves: Shelves, item: tuple[FaultId, tuple[str, ...], tuple[LiftId, ...]]) -> list[Told]:
    fault, kits, lifts = item
    about = {lift: shelf for lift, shelf in shelves.items() if lift in lifts}
    return [told(question, matter) for question, matter in matters(about, fault, kits)]


def _path(shelves: Shelves, item: tuple[LiftId, str]) -> PathTold:
    lift, kit = item
    return path_told(shelves[lift], kit)


def changes_between(
    before: Replies, after: Replies, names: Mapping[str, str]
) -> tuple[tuple[Change, ...], tuple[Change, ...]]:
    """The chains and the paths that differ; `names` maps each id that was renamed to the new one."""
    chains = _changes(_by_question(before.chains, names), _by_question(after.chains, {}))
    paths = _changes(_by_question(before.paths, names), _by_question(after.paths, {}))
    return chains, paths


def _by_question(answers: Iterable[Answer], names: Mapping[str, str]) -> dict[Asked, Answer]:
    found: dict[Asked, Answer] = {}
    for answer in answers:
        drills = tuple((DrillId(names.get(drill, drill)), load) for drill, load in answer.drills)
        if isinstance(answer, PathTold):
            lift = names.get(answer.lift, answer.lift)
            found[lift, "", "", answer.kit] = answer._replace(lift=LiftId(lift), drills=drills)
            continue
        asked = answer.question
        lift, fault = names.get(asked.lift, asked.lift), names.get(asked.fault, asked.fault)
        renamed = answer._replace(
            question=asked._replace(lift=LiftId(lift), fault=FaultId(fault)),
            drills=drills,
            finish=tuple(sorted(DrillId(names.get(drill, drill)) for drill in answer.finish)),
        )
        found[lift, fault, asked.cause, asked.kit] = renamed
    return found


def _changes(before: Mapping[Asked, Answer], after: Mapping[Asked, Answer]) -> tuple[Change, ...]:
    """The questions answered otherwise, those that differ in nothing but the kit together."""
    found: dict[object, Change] = {}
    for asked in sorted(before.keys() | after.keys()):
        was, now = before.get(asked), after.get(asked)
        if _plainly(was) == _plainly(now):
            continue
        lift, fault, cause, kit = asked
        alike = (lift, fault, cause, _plainly(was), _plainly(now))
        if alike in found:
            found[alike] = found[alike]._replace(kits=(*found[alike].kits, kit))
        else:
            found[alike] = _change(Change(lift, fault, cause, (kit,), was, now))
    return tuple(found.values())


def _plainly(answer: Answer | None) -> object:
    """What of an answer makes it another, whatever was asked."""
    if answer is None:
        return None
    if isinstance(answer, PathTold):
        return answer.drills, answer.cost, answer.seconds, answer.why
    return answer.drills, answer.cost, answer.seconds, answer.sittings, answer.finish, answer.why


def _change(change: Change) -> Change:
    was, now = change.before, change.after
    if was is None or now is None or not was.drills or not now.drills:
        return change
    old, new = dict.fromkeys(was.ids), dict.fromkeys(now.ids)
    loads = [_loads(answer) for answer in (was, now)]
    return change._replace(
        added=tuple(drill for drill in new if drill not in old),
        dropped=tuple(drill for drill in old if drill not in new),
        moved=moved(was.ids, now.ids),
        reloaded=tuple(sorted(drill for drill in old if drill in new and loads[0][drill] != loads[1][drill])),
    )


def _loads(answer: Answer) -> dict[str, list[int]]:
    found: dict[str, list[int]] = {}
    for drill, load in answer.drills:
        found.setdefault(drill, []).append(int(load))
    return found
