"""The drills a chain may choose from, at one load each, as the search's input."""

from collections.abc import Sequence
from typing import NamedTuple

from kb import dose, kit
from kb.ask.field import Field
from kb.ask.matter import Matter
from kb.ask.shelf import profile_key
from kb.terms import Drill, DrillId, Load, Stage

__all__ = ["STRAY", "Choices", "choices_of", "finish_of", "why_not"]

STRAY = 600
"""What an entry past preparation costs that neither addresses nor tests the fault, s of a lifter's time."""

Node = tuple[Drill, Load]


class Choices(NamedTuple):
    """The search's field, the drill and load of each node, and the nodes of each drill every chain needs."""

    field: Field
    nodes: Sequence[Node]
    must: dict[int, tuple[int, ...]]


def finish_of(matter: Matter) -> tuple[Drill, ...]:
    """Strengthening for the cause that the kit can do at light or more.

    Drills that name this very cause come before those that name the fault whatever its cause; then in id order.
    """
    found = []
    for drill in matter.shelf.drills.values():
        if drill.stage is not Stage.FINISH or drill.id not in matter.fits:
            continue
        most = min(drill.load[1], matter.fits[drill.id].load)
        if matter.addresses(drill, most):
            found.append(drill)
    own = (matter.worked.id, matter.worked_cause.id)
    return tuple(
        sorted(found, key=lambda drill: (all((said.fault, said.cause) != own for said in drill.faults), drill.id))
    )


def _nodes(matter: Matter) -> list[Node]:
    """Every doable drill at every load it may be done at, in id and load order."""
    lift_drill = matter.shelf.lift.drill
    found = []
    for drill_id in sorted(matter.doable):
        drill = matter.shelf.drills[drill_id]
        if drill.stage is Stage.FINISH:
            continue
        limit = matter.load if drill_id == lift_drill else matter.limit
        loads = tuple(kit.loads(drill, matter.fits[drill_id], limit))
        for load in [each for each in loads if each >= matter.question.least] or loads:
            if _useful(matter, drill, load):
                found.append((drill, load))
    return found


def _useful(matter: Matter, drill: Drill, load: Load) -> bool:
    """Preparation only where it works on the cause; the rest unless it is no bridge and nothing else."""
    if drill.stage is Stage.PREPARE:
        return matter.addresses(drill, load) and _opens(matter, drill)
    if drill.bridge or drill.id == matter.shelf.lift.drill:
        return True
    return matter.addresses(drill, load) or matter.tests_worked(drill, load)


def _opens(matter: Matter, drill: Drill) -> bool:
    """Whether a drill opens what was found stiff, where anything was."""
    return not matter.question.stiff or not matter.question.stiff.isdisjoint(drill.opens)


def choices_of(matter: Matter) -> Choices:
    """The search's input for a chain; the lift must be doable and the kit not too small (`why_not`)."""
    shelf, lift = matter.shelf, matter.shelf.lift
    nodes = _nodes(matter)
    groups = {drill.id: matter.groups_in_doubt(drill) for drill, _ in nodes}
    members = sorted({member for named in groups.values() for group in named for member in group})
    bits = {member: 1 << n for n, member in enumerate(members)}
    numbers = {drill_id: n for n, drill_id in enumerate(sorted({drill.id for drill, _ in nodes}))}
    addresses = [matter.addresses(drill, load) for drill, load in nodes]
    shows = [matter.tests_worked(drill, load) for drill, load in nodes]
    prepares = [drill.stage is Stage.PREPARE for drill, _ in nodes]
    is_lift = [drill.id == lift.drill for drill, _ in nodes]
    work = [is_lift[n] or addresses[n] for n in range(len(nodes))]
    seconds = [dose.work_seconds(drill) if work[n] else dose.check_seconds(drill) for n, (drill, _) in enumerate(nodes)]
    stray = [not (prepares[n] or addresses[n] or shows[n]) for n in range(len(nodes))]
    goal = next(n for n, (_, load) in enumerate(nodes) if is_lift[n] and load == matter.load)
    before = _before_goal(matter, nodes, shows)
    any_strengthens = matter.worked_cause.kind == "strength" and bool(finish_of(matter))
    field = Field(
        drill=[numbers[drill.id] for drill, _ in nodes],
        load=[int(load) for _, load in nodes],
        profile=[shelf.steps.number[profile_key(matter.dials(drill, load))] for drill, load in nodes],
        enter=[seconds[n] + STRAY * stray[n] for n in range(len(nodes))],
        seconds=seconds,
        work=[addresses[n] and not is_lift[n] for n in range(len(nodes))],
        addresses=addresses,
        prepares=prepares,
        may_open=[not prepares[n] and (addresses[n] or shows[n]) for n in range(len(nodes))],
        before_goal=[
            allowed and n != goal and not (prepares[n] and before.tests) for n, allowed in enumerate(before.nodes)
        ],
        groups=[tuple(sum(bits[member] for member in group) for group in groups[drill.id]) for drill, _ in nodes],
        gains=[bits.get(drill.id, 0) for drill, _ in nodes],
        goal=goal,
        goal_may_open=not before.tests and matter.load <= Load.LIGHT,
        must_prepare=matter.worked_cause.kind == "mobility",
        must_address=not any_strengthens,
        sizes=shelf.steps.sizes,
        least=shelf.steps.least,
    )
    return Choices(field, nodes, _must(matter, nodes, bits, groups))


class _Before(NamedTuple):
    nodes: tuple[bool, ...]
    tests: bool


def _before_goal(matter: Matter, nodes: Sequence[Node], shows_worked: list[bool]) -> _Before:
    """Which nodes may come right before the lift: those that test the fault, if any drill but the lift does.

    A lift above light comes right after itself at light.
    """
    lift_drill = matter.shelf.lift.drill
    same = matter.where == matter.where_worked
    shows = shows_worked if same else [matter.tests(drill, load) for drill, load in nodes]
    needed = any(shows[n] and drill.id != lift_drill for n, (drill, _) in enumerate(nodes))
    allowed = [
        (shown or not needed) and (matter.load <= Load.LIGHT or (drill.id == lift_drill and load is Load.LIGHT))
        for shown, (drill, load) in zip(shows, nodes, strict=True)
    ]
    return _Before(tuple(allowed), needed)


def _must(
    matter: Matter,
    nodes: Sequence[Node],
    bits: dict[DrillId, int],
    groups: dict[DrillId, tuple[tuple[DrillId, ...], ...]],
) -> dict[int, tuple[int, ...]]:
    """The nodes of each drill that the lift needs, straight or through another, with no other way."""
    there = {drill.id for drill, _ in nodes}
    waiting, needed = [matter.shelf.lift.drill], set[DrillId]()
    while waiting:
        for group in groups.get(waiting.pop(), ()):
            members = [member for member in group if member in there]
            if len(members) == 1 and members[0] not in needed:
                needed.add(members[0])
                waiting.append(members[0])
    return {
        bits[member]: tuple(n for n, (drill, _) in enumerate(nodes) if drill.id == member) for member in sorted(needed)
    }


def why_not(matter: Matter) -> str | None:
    """Why this kit can't give a chain, as a sentence; None if nothing is against it yet."""
    lift = matter.shelf.lift
    name = lift.name.lower()
    drill = matter.shelf.drills[lift.drill]
    if drill.id not in matter.fits:
        lacks = kit.lacking(drill, matter.question.have, matter.shelf.items)
        said = f" without {' and '.join(lacks)}" if lacks else ""
        return f"the {name} itself can't be done with this kit{said}"
    if drill.id not in matter.doable:
        return f"what must come before the {name} can't be done with this kit"
    if not matter.tests(drill, matter.load):
        return _untested(matter)
    usable = [
        (each, load)
        for each in (matter.shelf.drills[drill_id] for drill_id in matter.doable & matter.addressing)
        if each.stage is not Stage.FINISH
        for load in kit.loads(each, matter.fits[each.id], matter.load if each.id == lift.drill else matter.limit)
        if matter.addresses(each, load)
    ]
    if matter.worked_cause.kind == "mobility" and not any(
        each.stage is Stage.PREPARE and _opens(matter, each) for each, _ in usable
    ):
        return "no drill that opens the joint for this cause can be done with this kit"
    if not usable and not (matter.worked_cause.kind == "strength" and finish_of(matter)):
        return "no drill for this cause can be done with this kit"
    return None


def _untested(matter: Matter) -> str:
    """That the lift shows nothing for sure at its load: the fault may be seen there, and gone it proves nothing."""
    lift = matter.shelf.lift
    name = lift.name.lower()
    if matter.shelf.drills[lift.drill].stage is not Stage.WHOLE:
        return (
            f"the {name} doesn't show this fault for sure. Kept to for good, it may leave the fault behind: `drillpath"
            " path` with the same `--to` builds it up. Else ask without `--to` or `--quiet`, or end in a part that"
            " does"
        )
    if matter.where.least.load > matter.load:
        under = "a bar" if matter.load < Load.LIGHT else "working weight"
        said = f"at {matter.load.word} load the {name} doesn't test this fault"
        return f"{said}: it could look gone and still be there under {under}"
    return f"with this gear the {name} doesn't test this fault: it could look gone and still be there in the full lift"
