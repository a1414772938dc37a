"""What to do with minutes that a chain doesn't take, where there are enough of them to be worth a word."""

from kb import dose
from kb.ask.matter import Matter
from kb.ask.route import Route
from kb.show.setting import Setting, wrapped

__all__ = ["time_left"]

WORTH_A_WORD_S = 480
"""So much time left over, s. Ours."""


def time_left(matter: Matter, route: Route, kit: str | None, setting: Setting) -> list[str]:
    """How much of the time asked for is left, and the command that fills it; nothing where that is little.

    `kit` is None where the question listed what there is.
    """
    question = matter.question
    if question.seconds is None or len(route.sittings) > 1 or question.seconds - route.seconds < WORTH_A_WORD_S:
        return []
    room = f"--kit {kit}" if kit else f"--have {','.join(sorted(question.have))}"
    minutes = dose.minutes(question.seconds)
    said = (
        f"That is {dose.minutes(route.seconds)} of {minutes} min. The rest is for the lift at what shows no fault, or"
        " filled by the minute, with a warm-up before and what strengthens after:"
    )
    command = f"drillpath session --fault {matter.fault.id} --lift {matter.shelf.lift.id} --cause {matter.cause.id}"
    return ["", *wrapped(said, setting.width), f"  {command} {room} --minutes {minutes}"]
