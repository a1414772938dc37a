"""What a screen's joints and aids are called, and the caution under it."""

from kb.ask.screen import STANCE_TURN

__all__ = ["BINDS", "CAUTION", "TESTS", "aid_said"]

BINDS = {
    "ankle": "ankle",
    "knee": "knee",
    "hip": "hip",
    "hinge": "back of the thigh",
    "back_hip": "front of the hip",
    "shoulder": "shoulder and upper back",
    "rack": "elbows in the rack",
    "elbow": "elbow",
    "wrist": "wrist",
    "depth": "depth of the squat",
    "lengths": "lengths of the limbs",
}
"""What binds, as it is said."""

TESTS = {
    "ankle": ("knee to wall", "--wall"),
    "shoulder": ("overhead reach at the wall", "--reach"),
    "rack": ("elbow height in the rack", "--elbows"),
    "hinge": ("hip hinge", "--hinge"),
    "depth": ("squat", "--squat"),
}
"""The test that each limit comes from, and its option."""

CAUTION = (
    "A tape and a wall, not an examination: a few degrees lie within their error, and reaching a position says nothing"
    " of holding a load there. Stretch to tension, never into pain. Where a joint hurts, pinches, locks or tingles, or"
    " one side is far from the other, stop and ask a doctor or a physiotherapist."
)
"""What is said under every screen."""


def aid_said(item: str, wedge_mm: float) -> str:
    """What helps now, as it is said.

    >>> aid_said("wedge", 20.0)
    '20 mm under the heels'
    """
    if item == "wedge":
        return f"{wedge_mm:g} mm under the heels"
    return f"feet {STANCE_TURN:g} degrees further out, knees over the toes"
