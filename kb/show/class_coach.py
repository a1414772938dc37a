"""What a coach of a class does, and with the time in which nothing is fixed: common practice, no source."""

from kb.ask.class_.slots import ClassPlan
from kb.show.class_words import WORTH_A_WORD, duty_said
from kb.show.session_words import clock

__all__ = ["FREE", "FREE_LATER", "coach_list"]

FREE = (
    "Free to look on throughout: count one round of everybody's, then stay, one or two at a time, with whoever hasn't"
    " met a standard or needs it easier (age, a joint, a first time), and give them what stands as easier in the"
    " drill's entry."
)
"""For who shows nothing and is nowhere wanted."""

FREE_LATER = (
    "Nothing more is fixed: go round, those who learn first, and count one round of each against its standard. Be at"
    " the heaviest bar whenever more goes on it. Who hasn't met a standard gets what stands as easier in the drill's"
    " entry."
)
"""For the last part of a class."""


def coach_list(plan: ClassPlan, coach: int) -> list[tuple[str, str]]:
    """When a coach, counted from 0, does what, in order; at the end what to do with the minutes that are left, if many.

    Empty for who has nothing to do.
    """
    own = [duty for duty in plan.duties if duty.coach == coach]
    table = [(clock(duty.start_s), duty_said(plan, duty)) for duty in own]
    since = max((duty.end_s for duty in own), default=0)
    if own and 60 * plan.matter.asked.minutes - since >= 60 * WORTH_A_WORD:
        table.append((clock(since), FREE_LATER))
    return table
