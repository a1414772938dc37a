"""What the feet do in a drill: whether it can be done above neighbours, and without a jolt."""

from typing import Literal

__all__ = ["FEET", "Feet"]

Feet = Literal["still", "step", "land"]

FEET: dict[Feet, str] = {
    "still": "stay on the floor",
    "step": "are moved without a bang",
    "land": "leave the floor and come down",
}
"""What each word says, quietest first; getting into the stance counts only where it is hopped for. Ours."""
