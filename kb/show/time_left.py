"""What to do with minutes that a chain doesn't take, where there are enough of them to be worth a word."""

from kb import dose
from kb.ask.route import Route
from kb.show.setting import Setting, wrapped

__all__ = ["time_left"]

WORTH_A_WORD_S = 480
"""So much time left over, s. Ours."""


def time_left(seconds: int | None, route: Route, command: str, setting: Setting) -> list[str]:
    """How much of the time asked for, s, is left, and the command that fills it; nothing where that is little."""
    if seconds is None or not command or len(route.sittings) > 1 or seconds - route.seconds < WORTH_A_WORD_S:
        return []
    minutes = dose.minutes(seconds)
    said = (
        f"That is {dose.minutes(route.seconds)} of {minutes} min. The rest is for the lift at what shows no fault, or"
        " filled by the minute, with a warm-up before and what strengthens after:"
    )
    return ["", *wrapped(said, setting.width), f"  {command}"]
