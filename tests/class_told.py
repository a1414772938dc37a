"""Small invented classes, planned in plain Python: for tests of what is said of a class."""

from kb.ask.class_.build import matter_of
from kb.ask.class_.doing import Doing, Own
from kb.ask.class_.greedy import greedy
from kb.ask.class_.people import Class, Lifter
from kb.ask.class_.slots import ClassPlan, plan_of
from kb.kit import Gear
from kb.terms import Dose, Drill, DrillId, FaultId, ItemId, LiftId, Load, Stage, Standard

__all__ = ["PARTNER", "STICK", "drill", "planned"]

LIFT, STICK, PARTNER = LiftId("clean"), ItemId("stick"), ItemId("partner")


def drill(name: str, *equipment: ItemId) -> Drill:
    """A stretch of three rounds."""
    dose = Dose(rounds=3, reps=5, rest_s=30)
    standard = Standard(1, 1, "seen")
    return Drill(DrillId(name), name.title(), (LIFT,), Stage.SEGMENT, standard, dose=dose, equipment=equipment)


def planned(
    count: int,
    *drills: Drill,
    knows: bool = True,
    work: bool = True,
    pairs: bool = True,
    load: Load = Load.STICK,
    by_stick: tuple[Gear, ...] | None = None,
    **more: object,
) -> ClassPlan:
    """So many lifters on one chain, planned in plain Python."""
    doings = tuple(
        Doing(
            each,
            load if each.equipment else Load.NONE,
            work,
            tuple(Gear(i, i) for i in each.equipment),
            by_stick=by_stick if each.equipment else None,
        )
        for each in drills
    )
    known = frozenset(each.id for each in drills) if knows else frozenset()
    people = tuple(Lifter(f"L{n}", LIFT, FaultId("low-elbows")) for n in range(count))
    asked = Class("Ours", people, {STICK: 3}, 60, 1)._replace(**more)
    matter = matter_of(asked, [Own(lifter, doings, known, later=n) for n, lifter in enumerate(people)], pairs=pairs)
    plan = greedy(matter.rotation)
    assert plan is not None
    return plan_of(matter, plan)
