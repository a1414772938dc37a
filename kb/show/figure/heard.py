"""What a figure shows, in words: for those who can't see it."""

from kb.terms import Position

__all__ = ["heard"]

BAR = {
    "floor": "the bar is on the floor",
    "below-knee": "the bar is at mid-shin",
    "knee": "the bar is at the knee",
    "thigh": "the bar is on the thigh",
    "hip": "the bar is at the hip",
    "shoulders": "the bar lies on the front of the shoulders",
    "neck": "the bar lies behind the neck",
    "overhead": "the bar is overhead",
    "hands": "the bar is in the hands, away from the body",
}

FEET = {"feet-flat": "feet flat", "toes": "heels lifted", "split": "feet split, the back heel lifted"}


def _degrees(value: float) -> str:
    return f"{value:.0f}°".replace("-", "\N{MINUS SIGN}")


def _lean(degrees: float) -> str:
    if abs(degrees) < 3:
        return "trunk upright"
    return f"trunk {abs(degrees):.0f}° {'forward' if degrees > 0 else 'back'} of upright"


def _back(degrees: float) -> str:
    return "" if abs(degrees) < 3 else f", back {'rounded' if degrees > 0 else 'hollow'}"


def _elbow(degrees: float) -> str:
    return "elbows straight" if abs(degrees) < 5 else f"elbow bent {_degrees(degrees)}"


def heard(position: Position) -> str:
    """A posture in a sentence, from the floor up."""
    angles = position.angles
    if "front_knee" in angles:
        legs = f"front knee bent {_degrees(angles['front_knee'])}, back knee {_degrees(angles['back_knee'])}"
    else:
        legs = f"knee bent {_degrees(angles['knee'])}, hip {_degrees(angles['hip'])}"
    said = [
        FEET.get(position.contact, position.contact),
        legs,
        _lean(angles["trunk"]) + _back(angles.get("back", 0.0)),
        _elbow(angles["elbow"]),
        BAR.get(position.bar, f"the bar is at the {position.bar}"),
    ]
    return f"Seen from the side, facing right: {'; '.join(said)}."
