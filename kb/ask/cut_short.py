"""Minutes too few for a chain: the first of its work alone, with as many rounds as they hold."""

from kb.ask.chain import Chain
from kb.ask.route import Entry
from kb.dose import sets, work_seconds

__all__ = ["cut_short"]


def cut_short(found: Chain, seconds: int) -> Entry | None:
    """The first work of a chain that was found without a limit, in so many seconds at most.

    Rounds are left out, nothing else: a round is as it was. None where what fits is too little for the standard.
    """
    first = next((entry for entry in found.routes[0].entries if entry.work), None)
    if first is None:
        return None
    for rounds in range(first.drill.dose.rounds, 0, -1):
        drill = first.drill._replace(dose=first.drill.dose._replace(rounds=rounds))
        enough = rounds * max(sets(drill.dose)[0], 1) * drill.dose.sides >= drill.standard.of
        if enough and work_seconds(drill) <= seconds:
            return first._replace(drill=drill, seconds=work_seconds(drill))
    return None
