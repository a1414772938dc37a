"""A body that is stiff somewhere: what opens it, how to work meanwhile, what spares it, and what it is judged by."""

from collections.abc import Collection, Iterable, Mapping, Sequence

from kb.ask.plan.lesson import Own
from kb.ask.shelf import Shelf
from kb.dose import work_seconds
from kb.errors import BadInput
from kb.terms import Catch, Cause, Drill, DrillId, Fault, FaultId, ItemId, Load, Speed, Stage

__all__ = ["aids", "check_joints", "meanwhile", "openers", "own", "unspared"]

BELOW = frozenset({"ankle", "calf", "hip", "adductor", "hamstring", "knee"})
"""Joints that end a squat or a split too soon."""

HANDS = frozenset({"wrist", "elbow"})
"""Joints that keep a bar off the shoulders: two weights, each in its own hand, spare them."""

OVERHEAD = frozenset({"shoulder", "lat", "upper-back"})
"""Joints that keep a bar in front of the head."""

PAIR = ItemId("hand-weight-pair")
HEEL_RAISERS = (ItemId("wedge"), ItemId("discs"), ItemId("books"))
"""What goes under the heels, without weight only; the first that is there is taken."""


def check_joints(shelf: Shelf, joints: Iterable[str]) -> None:
    """Raise BadInput, with the nearest, for a joint that no drill of the lift opens."""
    from difflib import get_close_matches

    known = sorted({joint for drill in shelf.drills.values() for joint in drill.opens})
    for joint in joints:
        if joint not in known:
            near = tuple(get_close_matches(joint, known, n=3, cutoff=0.5)) or tuple(known)
            raise BadInput(f"no drill of the {shelf.lift.name.lower()} opens a joint {joint!r}", nearest=near)


def _opens_for(shelf: Shelf, joint: str) -> list[Drill]:
    return [drill for drill in shelf.drills.values() if drill.stage is Stage.PREPARE and joint in drill.opens]


def openers(
    shelf: Shelf,
    fits: Collection[DrillId],
    at_home: Collection[DrillId],
    faults: Mapping[FaultId, Fault],
    joints: Sequence[str],
) -> list[Drill]:
    """The drill that opens each stiff joint with what is there, in the joints' order; one may do for two.

    Of several that which opens this joint before others, can be done `at_home` too, helps most causes of stiffness,
    and is easiest.
    """

    def worth(drill: Drill, joint: str) -> tuple[bool, bool, int, int, int, DrillId]:
        helps = sum(
            each.cause is not None
            and each.fault in faults
            and bool(set(faults[each.fault].lifts) & set(shelf.lift.serves))
            and faults[each.fault].cause(each.cause).kind == "mobility"
            for each in drill.faults
        )
        home = drill.id in at_home
        return drill.opens[0] != joint, not home, -helps, len(drill.regressions), work_seconds(drill), drill.id

    found: list[Drill] = []
    for joint in joints:
        able = [drill for drill in _opens_for(shelf, joint) if drill.id in fits]
        if able and not any(joint in drill.opens for drill in found):
            found.append(min(able, key=lambda drill: worth(drill, joint)))
    return found


def meanwhile(shelf: Shelf, faults: Mapping[FaultId, Fault], joint: str) -> tuple[Fault, Cause] | None:
    """The fault of the lift and its cause that say how to work with a stiff joint; None where none does.

    The cause is named after the joint where one is; of several that which most drills open, then which names no other
    joint, then which most drills act on.
    """
    opening = _opens_for(shelf, joint)
    found: list[tuple[tuple[bool, int, int, int, str], Fault, Cause]] = []
    for fault in faults.values():
        for cause in fault.causes:
            if not set(fault.lifts) & set(shelf.lift.serves) or cause.kind != "mobility" or not cause.throughout:
                continue
            opened = sum(_acts_on(drill, fault, cause) for drill in opening)
            acted = sum(_acts_on(drill, fault, cause) for drill in shelf.drills.values())
            if opened:
                found.append(((joint in cause.id, opened, -len(cause.id), acted, fault.id), fault, cause))
    return max(found, key=lambda each: each[0])[1:] if found else None


def _acts_on(drill: Drill, fault: Fault, cause: Cause) -> bool:
    return any(each.fault == fault.id and each.cause == cause.id for each in drill.faults)


def unspared(drill: Drill, joints: Collection[str], have: Collection[ItemId]) -> int:
    """How many of the stiff joints a movement doesn't spare.

    Caught high spares what ends a squat too soon; two weights spare the hands, where they are there.
    """
    found = 0
    for joint in joints:
        if joint in BELOW and drill.catch is Catch.FULL:
            found += 1
        if joint in HANDS and PAIR in have and PAIR not in drill.equipment:
            found += 1
    return found


def _asks(shelf: Shelf, drill: Drill, joint: str) -> bool:
    """Whether a drill needs a joint's range: it stands on a drill that opens it, or goes where such a one leads."""
    opening = {each.id: each for each in _opens_for(shelf, joint)}
    if any(member in opening for group in drill.prerequisites for member in group):
        return True
    goes = set(drill.target_position.values())
    return any(each.opens[0] == joint and goes & set(each.for_positions) for each in opening.values())


def own(shelf: Shelf, drill: Drill, joints: Collection[str]) -> Own:
    """What a drill is judged by for a stiff body: its own depth or line where the drill asks for the joint's range.

    A movement at full speed that doesn't go deep keeps its standard.
    """
    found: set[Own] = set()
    for joint in joints:
        if joint in BELOW:
            dips = drill.catch is Catch.NONE and drill.speed < Speed.FULL and _asks(shelf, drill, joint)
            found |= {"depth"} if drill.catch is Catch.FULL or dips else set()
        elif drill.speed < Speed.FULL and _asks(shelf, drill, joint):
            found.add("line")
    if drill.stage is Stage.PREPARE or not found:
        return ""
    return "depth" if "depth" in found else "line"


def aids(shelf: Shelf, drill: Drill, load: Load, joints: Collection[str], have: Collection[ItemId]) -> tuple[str, ...]:
    """What helps a stiff body in a drill: an item under the heels without weight, or `wider-grip`, `two-fingers`.

    Raised heels only where the feet stay, with a stick at most. Common practice, no source.
    """
    found: list[str] = []
    if drill.stage is Stage.PREPARE:
        return ()
    held = set(joints)
    squats = drill.catch is Catch.FULL and "split" not in {each for ends in drill.reach.values() for each in ends}
    if held & {"ankle", "calf"} and squats and drill.speed <= Speed.SLOW and load <= Load.STICK and not drill.aid:
        found += [item for item in HEEL_RAISERS if item in have][:1]
    carries = load >= Load.STICK and drill.catch >= Catch.STANDING
    if held & OVERHEAD and carries and ItemId("headroom") in drill.equipment:
        found.append("wider-grip")
    if held & HANDS and carries and any(_asks(shelf, drill, joint) for joint in held & HANDS):
        found.append("two-fingers")
    return tuple(found)
