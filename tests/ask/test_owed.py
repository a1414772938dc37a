"""What every path must pass, and in which order, from the groups alone."""

from kb.ask.field import Band, Field
from kb.ask.owed import Groups, Needs, comes_first, some_list, things_owed
from kb.terms import DrillId


def needs(
    given: dict[str, list[list[str]]],
    *,
    prepares: str = "",
    bands: dict[str, Band] | None = None,
    order: str = "either",
) -> Needs:
    """Groups by one-letter drills; the goal is z."""
    groups: Groups = {DrillId(i): [tuple(DrillId(m) for m in group) for group in given[i]] for i in given}
    own = {DrillId(i): band for i, band in (bands or {}).items()}
    field = Field(
        drill=(),
        load=(),
        profile=(),
        enter=(),
        seconds=(),
        work=(),
        addresses=(),
        prepares=(),
        may_open=(),
        before_goal=(),
        groups=(),
        gains=(),
        goal=0,
        goal_may_open=True,
        must_prepare=False,
        must_address=False,
        sizes=(),
        least=(),
        band=list(own.values()),
        order=order,
    )
    return Needs(DrillId("z"), groups, frozenset(DrillId(i) for i in prepares), own, field)


def test_a_drill_that_nothing_can_stand_in_for_is_owed() -> None:
    """Of two that either will do, one built on the other: the other is owed whichever is chosen."""
    asked = needs({"a": [], "b": [["a"]], "c": [["b"]], "z": [["b", "c"]]})
    assert things_owed(asked) == [("a",), ("b",)]


def test_a_group_is_owed_where_none_of_it_is_by_itself() -> None:
    """Either of two, neither needing the other: one thing owed; a wider group that it serves is not."""
    asked = needs({"a": [], "b": [], "c": [["a", "b", "d"]], "d": [], "z": [["c"], ["b", "a"]]})
    assert things_owed(asked) == [("c",), ("a", "b")]


def test_what_a_thing_needs_comes_first() -> None:
    """Needed straight or through another, and through every member of a group."""
    asked = needs({"a": [], "b": [["a"]], "c": [["b"]], "d": [["a"]], "e": [["a"]], "z": [["c"], ["d", "e"]]})
    things = things_owed(asked)
    assert things == [("a",), ("b",), ("c",), ("d", "e")]
    assert comes_first(asked, things) == [0b0, 0b1, 0b11, 0b1]


def test_some_list_has_what_is_needed_and_no_more() -> None:
    """Preparation first, each after what it needs, and of either only one."""
    asked = needs({"a": [["p"]], "b": [["a"]], "c": [], "p": [], "q": [], "z": [["b"], ["c", "q"]]}, prepares="pq")
    assert some_list(asked) == ("p", "q", "a", "b", "z")
    assert some_list(needs({"a": [["b"]], "b": [["a"]], "z": [["a"]]})) is None


def test_an_order_can_leave_no_list() -> None:
    """b is built on a, which starts later: it can be done going down and not going up."""
    given: dict[str, list[list[str]]] = {"a": [], "b": [["a"]], "z": [["b"]]}
    bands = {"a": (2, 2), "b": (1, 1)}
    assert some_list(needs(given, bands=bands, order="up")) is None
    assert some_list(needs(given, bands=bands, order="down")) == ("a", "b", "z")


def test_stretches_that_do_not_follow_one_another_part_the_ways() -> None:
    """Going up one of two stretches must be chosen: what needs both is out of reach, what needs either is not."""
    bands = {"a": (0, 3), "b": (1, 2)}
    both: dict[str, list[list[str]]] = {"a": [], "b": [], "z": [["a"], ["b"]]}
    either: dict[str, list[list[str]]] = {"a": [], "b": [], "z": [["a", "b"]]}
    assert some_list(needs(both, bands=bands, order="up")) is None
    assert some_list(needs(either, bands=bands, order="up")) in [("a", "z"), ("b", "z")]
    assert things_owed(needs(either, bands=bands, order="up")) == [("a", "b")]
