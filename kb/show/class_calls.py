"""What a coach calls to those who do a drill together, so that all move at once: from the drill's speed and dose."""

from collections.abc import Iterator, Sequence

from kb import dose
from kb.ask.class_.rotation import TICK_S, TOGETHER
from kb.ask.class_.slots import ClassPlan, Slot
from kb.show.session_words import clock
from kb.terms import Catch, Drill, Speed, Stage

__all__ = ["call_of", "calls_said"]

PHASES = ("Down", "Hold", "Up", "Hold")
"""What a tempo counts, in its order."""

OPENING = ("Out", "Hold", "Back", "Hold")
"""The same for preparation, which goes out of a posture and back into it."""


def calls_said(plan: ClassPlan) -> list[tuple[str, str]]:
    """When a drill is first done by four or more at the same time, and what is called then: one line for each drill.

    Where every coach is with somebody else meanwhile, one of those who do it calls. Who practises what they hold isn't
    called: no coach runs that.
    """
    found: dict[str, tuple[int, str]] = {}
    calling: list[tuple[int, int]] = []
    start = plan.matter.asked.warm_up_s
    for now in range(start, plan.end_s, TICK_S):
        at: dict[tuple[str, str], list[Slot]] = {}
        for slot in _under_way(plan, now):
            at.setdefault((slot.drill.id, slot.part), []).append(slot)
        for (drill, part), slots in at.items():
            if len(slots) >= TOGETHER and drill not in found:
                end = max(slot.end_s for slot in slots)
                free = _coach_free(plan, calling, now, end)
                calling += [(now, end)] if free else []
                themselves = "" if free else " (one of them calls)"
                found[drill] = (now, _said(slots[0].drill, themselves, work=part == "work"))
    return [(clock(now), said) for now, said in sorted(found.values())]


def _coach_free(plan: ClassPlan, calling: Sequence[tuple[int, int]], start: int, end: int) -> bool:
    """Whether one coach at least has nothing else to do, and to call, from `start` to `end`, s."""
    busy = {duty.coach for duty in plan.duties if duty.start_s < end and start < duty.end_s}
    calls = sum(a < end and start < b for a, b in calling)
    return len(busy) + calls < plan.matter.asked.coaches


def _under_way(plan: ClassPlan, now: int) -> Iterator[Slot]:
    for each, own in zip(plan.lifters, plan.matter.owns, strict=True):
        for slot in () if own.by_themselves else each.slots:
            if slot.start_s <= now < slot.end_s and slot.part in ("work", "check"):
                yield slot


def _said(drill: Drill, who: str, *, work: bool) -> str:
    """The drill, who calls where no coach does, what is called, how often, how many rounds."""
    given = drill.dose
    rounds = len(dose.sets(given)) if work else 1
    times = f" {dose.sets(given)[0]} times" if given.reps > 1 else ""
    side = ", each side" if given.sides == 2 else ""
    between = ""
    if rounds > 1:
        rest = f"one every {given.every_s} s" if given.every_s else f"rest {given.rest_s} s" if given.rest_s else ""
        between = f"; {rounds} rounds{', ' if rest else ''}{rest}"
    how = f"{times}{side}{between}"
    return f'{drill.name}{who}: "{call_of(drill)}"{how}{"." if how else ""}'


def call_of(drill: Drill) -> str:
    """The words for one repetition, or for one hold.

    Held: when to set, how long to hold. Slow, or with a pause: the counts of its tempo, from where the bar is. At full
    speed: when to go, and when to let it down again, at a coach's pace.
    """
    given = drill.dose
    held = f"Hold, {given.hold_s} s." if given.hold_s else ""
    if not given.reps:
        return f"Set. {held} Rest."
    counted = drill.speed < Speed.FULL and given.tempo is not None
    return f"{_counts(drill) if counted else _go(drill)}{f' {held} Rest.' if held else ''}"


def _go(drill: Drill) -> str:
    caught = drill.catch is not Catch.NONE
    return f"Ready. Go.{' Hold 2.' if caught else ''} Down."


def _counts(drill: Drill) -> str:
    """A tempo as it is counted aloud, the word being its first count; what lies on the floor goes up first."""
    words = OPENING if drill.stage is Stage.PREPARE else PHASES
    phases = list(zip(words, drill.dose.tempo or (), strict=True))
    if any(first == "start" for first, _ in drill.reach.values()):
        phases = phases[2:] + phases[:2]
    counts = [", ".join([word, *map(str, range(2, seconds + 1))]) for word, seconds in phases if seconds]
    return " ".join(f"{each}." for each in counts)
