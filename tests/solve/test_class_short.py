"""What is short is looked for by planning the class anew: nothing is said that isn't confirmed."""

from kb.ask.class_.rotation import Mode, Rotation, Task, Unit
from kb.ask.class_.short import sentence_of
from kb.solve.short import shortages
from kb.terms import DrillId, ItemId, Load

BAR = ItemId("bar")


def rotation(bars: int, last: int) -> Rotation:
    """Two lifters, each with a drill of two minutes at a bar, who won't wait."""
    units = tuple(Unit((n,), 0, (Task(DrillId("d"), Load.LIGHT, True, (Mode(4, ((BAR, 1),)),)),)) for n in range(2))
    return Rotation(units, (), {BAR: bars}, 1, 2, last, 0, 2)


def said(again: dict[tuple[str, int], list[Rotation]]) -> list[tuple[str, int]]:
    """What is short by how much, where more of a thing is planned anew as given."""
    return [
        (each.what, each.by if each.what != "wait" else each.by // 30)
        for each in shortages(rotation(1, 8), lambda what, by: again.get((what, by), []))
    ]


def test_without_planning_anew_the_rest_stays_as_it_is() -> None:
    """One more bar, or two minutes of patience; more minutes or coaches alone are of no use."""
    found = shortages(rotation(1, 8))
    assert [(each.what, each.by) for each in found] == [("bar", 1), ("wait", 120)]
    assert sentence_of(found) == "1 more bar or 120 more seconds of waiting at a time"
    assert sentence_of(found[:1]) == "1 more bar"
    assert [(each.what, each.by) for each in shortages(rotation(2, 2))] == [("minutes", 1)]


def test_what_planning_anew_does_not_confirm_is_not_said() -> None:
    """The class may ask for something else when it has more."""
    assert said({}) == []
    assert said({("bar", 1): [rotation(1, 8)]}) == []
    assert said({("bar", 1): [rotation(1, 8), rotation(2, 8)]}) == [("bar", 1)]


def test_the_least_is_looked_for_on_both_sides() -> None:
    """More than first thought, or less; and with one less it is proved that there is no plan."""
    assert said({("bar", 3): [rotation(2, 8)]}) == [("bar", 3)]
    assert said({("wait", 4): [rotation(2, 8)], ("wait", 3): [rotation(2, 8)]}) == [("wait", 3)]
    assert said({("bar", 9): [rotation(2, 8)]}) == []
