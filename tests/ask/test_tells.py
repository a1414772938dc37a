"""The cheapest checks that put a fault's causes apart."""

from itertools import combinations, permutations

from hypothesis import given
from hypothesis import strategies as st

from kb.ask.tells import decide, separates
from kb.terms import Cause, Fault, FaultId, LiftId, Tell

CAUSES = ("a", "b", "c", "d")


def a_fault(tells: tuple[Tell, ...], causes: tuple[str, ...] = CAUSES) -> Fault:
    return Fault(
        id=FaultId("f"),
        name="f",
        lifts=(LiftId("snatch"),),
        phases=(("start", "knee"),),
        causes=tuple(Cause(id=cause, kind="timing", text="") for cause in causes),
        tells=tells,
    )


def a_tell(seconds: int, yes: str, no: str) -> Tell:
    return Tell(do="", look="", seconds=seconds, yes=tuple(yes), no=tuple(no))


def test_seconds_decide() -> None:
    """Not the number of checks: two that part everything in 85 s beat three in 90 s."""
    both = a_tell(50, "ab", "cd"), a_tell(20, "a", "b"), a_tell(20, "c", "d"), a_tell(35, "ac", "bd")
    assert [tell.seconds for tell in decide(a_fault(both)).tells] == [50, 35]
    assert decide(a_fault(both)).seconds == 85


def test_pairs_that_no_check_parts_are_said() -> None:
    """Nothing is promised that the checks can't do."""
    decision = decide(a_fault((a_tell(10, "a", "bc"),), ("a", "b", "c")))
    assert decision.left_together == (("b", "c"),)
    assert decide(a_fault((), ("a", "b"))).left_together == (("a", "b"),)


sides = st.lists(st.sampled_from(["yes", "no", "neither"]), min_size=4, max_size=4)
tells = st.lists(st.tuples(st.integers(5, 40), sides), max_size=5).map(
    lambda drawn: tuple(
        a_tell(
            seconds,
            "".join(cause for cause, where in zip(CAUSES, side, strict=True) if where == "yes"),
            "".join(cause for cause, where in zip(CAUSES, side, strict=True) if where == "no"),
        )
        for seconds, side in drawn
    )
)


@given(tells)
def test_no_other_choice_parts_as_much_for_less(drawn: tuple[Tell, ...]) -> None:
    """Exact: every subset in every order is tried here."""
    pairs = list(combinations(CAUSES, 2))
    possible = {pair for pair in pairs for tell in drawn if separates(tell, *pair)}
    least = min(
        sum(tell.seconds for tell in chosen)
        for size in range(len(drawn) + 1)
        for chosen in permutations(drawn, size)
        if {pair for pair in pairs for tell in chosen if separates(tell, *pair)} == possible
    )
    decision = decide(a_fault(drawn))
    assert decision.seconds == least
    assert {pair for pair in pairs for tell in decision.tells if separates(tell, *pair)} == possible
