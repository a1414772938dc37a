"""Forms spread over as few sessions as some way of filling them needs."""

from collections.abc import Sequence

from kb.ask.plan.fill import WAYS, Slot, fill
from kb.ask.plan.forms import Form
from kb.ask.plan.past import Past
from kb.ask.plan.weeks import Weeks

__all__ = ["STRETCH", "spread"]

STRETCH = 1.25
"""How much longer than the bound a plan may become for the sake of no empty session."""


def _faults_of(sessions: Sequence[Sequence[Slot]], weeks: Weeks, begun: int) -> tuple[int, int, int]:
    """What is wrong with sessions of one length: empty ones, those of one drill, and how late new drills come again.

    A session at home may be empty: there is then nothing yet that can be done there.
    """
    first, waits = dict[int, int](), 0
    for n, slots in enumerate(sessions):
        for slot in slots:
            first.setdefault(slot.form.n, n)
            waits += n - first[slot.form.n] if slot.exposure == 2 else 0
    empty = sum(not slots and not weeks.at_home(n) for n, slots in enumerate(sessions, begun + 1))
    return empty, sum(len(slots) == 1 for slots in sessions), waits


def spread(forms: Sequence[Form], past: Sequence[Past], weeks: Weeks, *, begun: int, least: int) -> list[list[Slot]]:
    """The sessions after `begun` to the first lift day, from the `least` on, on which some way of filling them ends.

    Of the ways that end there the one with the least wrong, then the first. Where every way leaves a session
    empty, later lift days are tried as long as the plan stays within `STRETCH` of the bound.
    """
    spare: list[list[Slot]] | None = None
    last_day, most = least, begun + int((least - begun) * STRETCH)
    while True:
        filled = [fill(forms, past, weeks, begun=begun, last_day=last_day, way=way) for way in WAYS]
        ended = [sessions for sessions in filled if sessions is not None]
        best = min(ended, key=lambda sessions: _faults_of(sessions, weeks, begun), default=None)
        if best is not None and not _faults_of(best, weeks, begun)[0]:
            return best
        spare = spare or best
        if spare is not None and last_day >= most:
            return spare
        last_day += 1
