"""Doses that can be done, drawn by Hypothesis, for whatever is to hold of all of them."""

from hypothesis import strategies as st

from kb.terms import Dose

__all__ = ["doses"]


@st.composite
def doses(draw: st.DrawFn) -> Dose:
    """Rounds, good repetitions or intervals: each as the limits of an entry allow."""
    kind = draw(st.sampled_from(("rounds", "good", "clock")))
    reps = draw(st.integers(1 if kind == "good" else 0, 12))
    dose = Dose(
        rounds=draw(st.integers(1, 12)) if kind != "good" else 1,
        reps=reps,
        tempo=draw(st.none() | st.tuples(*[st.integers(0, 6)] * 4).filter(any)) if reps else None,
        hold_s=draw(st.integers(0 if reps else 5, 60)),
        sides=draw(st.integers(1, 2)),
        rest_s=draw(st.integers(0, 180)) if kind != "clock" else 0,
        good=draw(st.integers(1, 60)) if kind == "good" else 0,
        success=draw(st.integers(10, 100)) if kind == "good" else 80,
    )
    if kind != "clock":
        return dose
    rep = sum(dose.tempo) if dose.tempo else 4
    one = dose.sides * (dose.reps * rep + dose.hold_s)
    return dose._replace(every_s=one + draw(st.integers(0, 90)))
