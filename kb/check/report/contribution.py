"""What each drill is good for: how many default questions are lost, or get dearer, without it.

Three sorts of question are asked. Chains: every fault, cause and lift with each kit. Paths: every lift with each
kit. Swaps: every drill that a kit doesn't allow, of which the answers are the nearest drill that it does and the
first of the easier versions that its entry names.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from kb.ask.swap import swap
from kb.check.asked import PathTold, Told, matters, path_told, told
from kb.check.beside import Catalogue, Shelves, each
from kb.check.report.kept import Kept, kept_for
from kb.check.report.without import Loss, chain_losses, path_loss
from kb.kit import fit
from kb.make.library import Library
from kb.terms import DrillId, FaultId, ItemId, LiftId

__all__ = ["Asked", "Contribution", "Use", "asked_of", "contributions"]

Kits = tuple[str, ...]


class Use(NamedTuple):
    """Of one sort of question, how many a drill answers, are lost without it, get worse, and how much dearer in all."""

    holds: int = 0
    lost: int = 0
    dearer: int = 0
    more: int = 0


class Contribution(NamedTuple):
    """What a drill does for the answers, and what else it is kept for."""

    drill: DrillId
    chains: Use
    paths: Use
    swaps: Use
    kept: tuple[Kept, ...] = ()

    @property
    def counts(self) -> bool:
        """Whether any default question would be answered worse without it."""
        return any(use.lost or use.dearer for use in (self.chains, self.paths, self.swaps))


class Asked(NamedTuple):
    """Every default question answered, and what each drill's going changes in each answer."""

    chains: tuple[tuple[Told, tuple[Loss, ...]], ...]
    paths: tuple[tuple[PathTold, tuple[Loss, ...]], ...]
    swaps: tuple[tuple[DrillId, str, tuple[DrillId, ...], Loss], ...]


def asked_of(catalogue: Catalogue, kits: Kits) -> Asked:
    """Ask every default question with some kits, and those that hold a drill again without it."""
    library = catalogue.library
    chains = each(catalogue, _chains, [(fault, kits) for fault in library.faults])
    wanted = [(lift, kit) for lift in library.lifts for kit in kits]
    paths = each(catalogue, _path, wanted)
    held = [(answer, drill) for answer in paths for drill in _counted(library, answer)]
    losses = each(catalogue, _path_loss, held)
    by_path: dict[PathTold, list[Loss]] = {answer: [] for answer in paths}
    for (answer, _), loss in zip(held, losses, strict=True):
        if loss is not None:
            by_path[answer].append(loss)
    return Asked(
        chains=tuple(one for some in chains for one in some),
        paths=tuple((answer, tuple(by_path[answer])) for answer in paths),
        swaps=tuple(_swaps(library, kits)),
    )


def _chains(shelves: Shelves, item: tuple[FaultId, Kits]) -> list[tuple[Told, tuple[Loss, ...]]]:
    found = []
    for question, matter in matters(shelves, *item):
        answer = told(question, matter)
        found.append((answer, chain_losses(matter, answer)))
    return found


def _path(shelves: Shelves, item: tuple[LiftId, str]) -> PathTold:
    lift, kit = item
    return path_told(shelves[lift], kit)


def _counted(library: Library, answer: PathTold) -> list[DrillId]:
    return sorted(set(answer.ids) - {library.lifts[answer.lift].drill})


def _path_loss(shelves: Shelves, item: tuple[PathTold, DrillId]) -> Loss | None:
    answer, drill = item
    return path_loss(shelves[answer.lift], answer, drill)


def _swaps(library: Library, kits: Kits) -> Iterator[tuple[DrillId, str, tuple[DrillId, ...], Loss]]:
    """Each drill that a kit doesn't allow, the kit, what would do there instead, and what the first one's going costs.

    Asked twice: for the drills nearest to it, and for the easier versions that its entry names. A swap has no
    seconds: what it costs is how far off it is; an easier version costs nothing, but there may be no other.
    """
    for kit in kits:
        have: frozenset[ItemId] = library.kits.get(kit, frozenset())
        can = {each.id for each in library.drills.values() if fit(each, have, library.items) is not None}
        for drill in library.drills.values():
            if drill.id in can:
                continue
            found = swap(drill, have, drills=library.drills, items=library.items, lifts=library.lifts).swaps
            if found:
                nearest, *others = found
                more = others[0].distance - nearest.distance if others else 0
                loss = Loss(nearest.drill.id, lost=not others, more=more)
                yield drill.id, kit, tuple(near.drill.id for near in found), loss
            easier = tuple(said.drill for said in drill.regressions if said.drill in can)
            if easier:
                yield drill.id, kit, easier, Loss(easier[0], lost=len(easier) == 1)


def contributions(library: Library, asked: Asked) -> tuple[Contribution, ...]:
    """Every drill's contribution, in id order."""
    kept = kept_for(library, [answer for answer, _ in asked.chains])
    chains = _uses([(answer.ids + answer.finish, losses) for answer, losses in asked.chains])
    paths = _uses([(answer.ids, losses) for answer, losses in asked.paths])
    swaps = _uses([(near[:1], (loss,)) for _, _, near, loss in asked.swaps])
    for lift in library.lifts.values():
        of_chains = sum(one.question.lift == lift.id for one, _ in asked.chains if one.drills)
        of_paths = sum(one.lift == lift.id for one, _ in asked.paths if one.drills)
        chains[lift.drill] = _whole(chains, lift.drill, of_chains)
        paths[lift.drill] = _whole(paths, lift.drill, of_paths)
    return tuple(
        Contribution(drill, chains.get(drill, Use()), paths.get(drill, Use()), swaps.get(drill, Use()), kept[drill])
        for drill in library.drills
    )


def _whole(uses: Mapping[DrillId, Use], drill: DrillId, of_the_lift: int) -> Use:
    """What a lift's own drill is good for: without it every question about the lift is lost."""
    use = uses.get(drill, Use())
    return use._replace(lost=use.lost + of_the_lift)


def _uses(answers: Sequence[tuple[tuple[DrillId, ...], tuple[Loss, ...]]]) -> dict[DrillId, Use]:
    found: dict[DrillId, Use] = {}
    for ids, losses in answers:
        for drill in dict.fromkeys(ids):
            use = found.get(drill, Use())
            found[drill] = use._replace(holds=use.holds + 1)
        for loss in losses:
            if not (loss.lost or loss.more or loss.split or loss.untested):
                continue
            use = found.get(loss.drill, Use())
            found[loss.drill] = use._replace(
                lost=use.lost + loss.lost,
                dearer=use.dearer + (not loss.lost),
                more=use.more + (0 if loss.lost else max(0, loss.more)),
            )
    return found
