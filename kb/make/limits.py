"""How large or small each number of a dose may be: one table for the schema and for the rule that judges."""

__all__ = ["LIMITS", "LONGEST_BEAT_S", "SHORTEST_HOLD_S"]

LIMITS: dict[str, tuple[int, int]] = {
    "rounds": (1, 6),
    "reps": (0, 12),
    "hold_s": (0, 60),
    "sides": (1, 2),
    "rest_s": (0, 180),
    "set_up_s": (0, 300),
    "teach_s": (0, 600),
}
"""Least and most of each number; durations in seconds. A hold that is there lasts `SHORTEST_HOLD_S`.

Common practice in classes, no source: past these a drill is a session of its own, or a slip of the pen.
"""

SHORTEST_HOLD_S = 5
"""A hold shorter than this is a pause, and belongs in the tempo, s."""

LONGEST_BEAT_S = 30
"""The longest part of a repetition's tempo, s."""
