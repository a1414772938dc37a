"""How large or small each number of a dose may be: one table for the schema and for the rule that judges."""

__all__ = ["LIMITS", "LONGEST_BEAT_S", "MOST_ROUNDS", "SHORTEST_HOLD_S"]

LIMITS: dict[str, tuple[int, int]] = {
    "rounds": (1, 12),
    "reps": (0, 12),
    "hold_s": (0, 60),
    "sides": (1, 2),
    "rest_s": (0, 180),
    "good": (0, 60),
    "success": (10, 100),
    "every_s": (0, 300),
    "set_up_s": (0, 300),
    "teach_s": (0, 600),
}
"""Least and most of each number; durations in seconds. A hold that is there lasts `SHORTEST_HOLD_S`.

Common practice in classes, no source: past these a drill is a session of its own, or a slip of the pen.
"""

MOST_ROUNDS = 6
"""Rounds with rest between them at most; intervals, which are short and run by the clock, may be more."""

SHORTEST_HOLD_S = 5
"""A hold shorter than this is a pause, and belongs in the tempo, s."""

LONGEST_BEAT_S = 30
"""The longest part of a repetition's tempo, s."""
