"""A question asked again without one drill: what is in doubt stays in doubt, but that drill is never done.

An answer is the cheapest of all lawful lists, so taking a drill away can change only answers that hold it: any
other is still lawful and still the cheapest. So only those are asked again. One rule follows from what there is: what
comes before the lift must show the fault if any other drill can. Where that is the lift itself at a lower load, the
drills without which no other can are asked about too.
"""

from typing import NamedTuple

from kb.ask.choices import choices_of
from kb.ask.matter import Matter
from kb.ask.path import PATH_BUDGET
from kb.ask.shelf import Shelf, with_drills
from kb.check.asked import PathTold, Told, path_told, told
from kb.terms import DrillId, Load

__all__ = ["Loss", "chain_losses", "holders", "matter_without", "path_loss"]

TO_SEE = 64
"""States enough to see whether there is a path at all, where what it costs isn't to be compared."""


class Loss(NamedTuple):
    """A question that a drill's going changes: without it there is no answer, or it costs `more`.

    `split`: it no longer fits one sitting. `untested`: nothing before the lift shows the fault any more, and then it
    may even cost less. `proved`: no cheaper answer without the drill was overlooked.
    """

    drill: DrillId
    lost: bool
    more: int = 0
    split: bool = False
    untested: bool = False
    proved: bool = True


def matter_without(matter: Matter, drill: DrillId) -> Matter:
    """A question in which one drill can't be done, nor what needs it and has no other way."""
    left = set(matter.doable) - {drill}
    done: set[DrillId] = set()
    while True:
        ready = {
            each
            for each in left - done
            if all(not done.isdisjoint(group) for group in matter.groups_in_doubt(matter.shelf.drills[each]))
        }
        if not ready:
            break
        done |= ready
    fits = {each: fitted for each, fitted in matter.fits.items() if each != drill}
    return matter._replace(doable=frozenset(done), fits=fits)


def holders(matter: Matter, answer: Told) -> tuple[DrillId, ...]:
    """The drills without which a question could be answered otherwise, the lift's own aside, in id order.

    Those of its list; the only drill that strengthens, for a cause of strength, since something must act on it; and
    where the lift at a lower load is what shows the fault before the lift, those by which any other drill can.
    """
    lift = matter.shelf.lift.drill
    found = set(answer.ids)
    if matter.worked_cause.kind == "strength" and len(answer.finish) == 1:
        found |= set(answer.finish)
    if matter.load <= Load.LIGHT and answer.ids[-2:] == (lift, lift):
        found |= {drill for drill in matter.doable - {lift} if not _another_shows(matter_without(matter, drill))}
    return tuple(sorted(found - {lift}))


def _another_shows(matter: Matter) -> bool:
    """Whether any drill but the lift, at a load at which it may be done, shows the fault."""
    lift = matter.shelf.lift.drill
    return lift in matter.doable and any(
        drill.id != lift and matter.tests(drill, load) for drill, load in choices_of(matter).nodes
    )


def chain_losses(matter: Matter, answer: Told) -> tuple[Loss, ...]:
    """What the going of each drill that counts changes in the answer to one question, in id order."""
    found = []
    for drill in holders(matter, answer) if answer.drills else ():
        after = told(answer.question, matter_without(matter, drill))
        if not after.drills:
            found.append(Loss(drill, lost=True))
        elif after.weight > answer.weight:
            found.append(
                Loss(
                    drill,
                    lost=False,
                    more=after.cost - answer.cost,
                    split=after.sittings > 1 >= answer.sittings,
                    untested=answer.tested and not after.tested,
                    proved=answer.proved and after.proved,
                )
            )
    return tuple(found)


def path_loss(shelf: Shelf, answer: PathTold, drill: DrillId) -> Loss | None:
    """What the going of one drill of a path changes in it; None if nothing that can be told.

    Where a path isn't proved the cheapest, another's cost says nothing: then only whether there is one counts.
    """
    fewer = with_drills(shelf, {each: said for each, said in shelf.drills.items() if each != drill})
    after = path_told(fewer, answer.kit, budget=PATH_BUDGET if answer.proved else TO_SEE)
    if not after.drills:
        return Loss(drill, lost=True)
    if not answer.proved or after.cost <= answer.cost:
        return None
    return Loss(drill, lost=False, more=after.cost - answer.cost, proved=after.proved)
