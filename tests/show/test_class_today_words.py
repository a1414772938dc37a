"""What is said of today's drills: what everyone does, what is one round for want of time, what is left."""

from class_told import drill, planned

from kb.show.class_today import today_said
from kb.terms import DrillId

SQUAT, SNATCH = drill("squat"), drill("snatch")
TODAY = (DrillId("squat"), DrillId("snatch"))


def said(*owns: dict[str, object], work: bool = True) -> list[str]:
    """What is said where the lists of two differ so."""
    plan = planned(2, SQUAT, SNATCH, work=work, today=TODAY)
    lists = tuple(own._replace(**more) for own, more in zip(plan.matter.owns, owns, strict=True))
    return today_said(plan._replace(matter=plan.matter._replace(owns=lists)))


def test_what_everyone_does_is_said() -> None:
    """In full, or as one round where there is time for no more; nothing where nothing was asked."""
    every = {"today": TODAY}
    full = "Today everyone who learns does Squat and Snatch: one round of each drill on the way, then these in full"
    assert said(every, every) == [f"{full}."]
    assert said(every, every, work=False) == [f"{full} (Squat and Snatch as one round: there is time for no more)."]
    assert said({}, {}) == ["Nobody in this class learns the lift of `today`: it changes nothing."]
    assert today_said(planned(2, SQUAT)) == []


def test_what_is_left_is_said_with_the_minutes() -> None:
    """Whose it is where it isn't everyone's."""
    left = {"today": TODAY, "left": (SNATCH,), "left_s": 200}
    assert said(left, left)[1] == ("Left for another day: Snatch. With it the class would take 4 min more, at least.")
    assert said({"today": TODAY}, left)[1].startswith("Left for another day for L1: Snatch.")
    both = {"today": TODAY, "left": (SQUAT, SNATCH), "left_s": 600}
    assert said(both, both) == [
        "Left for another day: Squat and Snatch. With them the class would take 10 min more, at least."
    ]
