"""How who has no day's weight works up to one, in words."""

from kb.ask.class_.slot import Slot
from kb.show.coach_words import listed
from kb.show.session_words import span

__all__ = ["UP", "up_line"]

UP = (
    "Who holds the lift and has no day's weight works up to one: more goes on the bar only after a round in which the"
    " one whose turn is next has seen the standard every time, and nobody goes by what others lift. In the file"
    " `weight_kg` says the weight beforehand, and `bar: light` keeps somebody at a light bar."
)
"""The rule of it, for the coach's page. Common practice, no source."""


def up_line(slot: Slot) -> str:
    """What a lifter does: how many rounds of what, how the bar goes up, and when it doesn't.

    A shared bar only goes up. Common practice, no source.
    """
    reps, half = slot.drill.dose.reps, slot.rounds // 2
    turns = f" in turns with {listed(slot.shares)}," if slot.shares else ""
    first = f"the first {half} of {reps}, then singles" if reps > 1 else "singles"
    said = f"{slot.drill.name}, working up: {slot.rounds} rounds, one every {span(slot.every_s)},{turns} {first}."
    said += f"{' The bar comes from the rack.' if slot.racked else ''} Begin 5 kg over the empty bar. After a round to"
    said += " standard 5 kg more (10 while it's easy, 2.5 once it's hard), else the same again."
    if slot.shares:
        return f"{said} The second round that isn't: that was your weight; load for the others and call the standard."
    return f"{said} The second round that isn't: that was your weight; take 10 % off and stay there."
