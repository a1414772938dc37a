"""Two libraries side by side: entries, edges of the graph, and every default question that is answered otherwise."""

from typing import NamedTuple

from kb.check.diff.answers import Change, changes_between, replies
from kb.check.diff.edges import Edges, edges_between
from kb.check.diff.entries import Entries, entries_between, renamed_to
from kb.check.diff.touched import asked_in_all, touched
from kb.make.library import Library

__all__ = ["Diff", "diff"]


class Diff(NamedTuple):
    """All that differs. `kits` are those that both libraries have and questions were asked with.

    `asked` is how many questions for a chain and for a path there are with these kits.
    `unasked` says why chains and paths weren't compared; empty where they were.
    """

    entries: Entries
    edges: Edges
    kits: tuple[str, ...]
    chains: tuple[Change, ...] = ()
    paths: tuple[Change, ...] = ()
    asked: tuple[int, int] = (0, 0)
    unasked: str = ""

    @property
    def empty(self) -> bool:
        """Whether the two are alike in all that was compared."""
        return not any((*self.entries, *self.edges, self.chains, self.paths))


def diff(before: Library, after: Library) -> Diff:
    """What differs between two libraries.

    Where either has structural problems nothing can be asked of it, and only what is written is compared.
    """
    names = {gone[1]: come[1] for gone, come in renamed_to(before, after).items()}
    kits = tuple(sorted(before.kits.keys() & after.kits.keys()))
    found = Diff(entries_between(before, after), edges_between(before, after, names), kits)
    if before.content_hash and before.content_hash == after.content_hash:
        return found
    broken = [which for which, library in (("first", before), ("second", after)) if library.problems]
    if broken:
        return found._replace(unasked=f"the {' and the '.join(broken)} can't be asked: `drillpath check` says why")
    about = touched(before, after)
    chains, paths = changes_between(replies(before, kits, about), replies(after, kits, about), names)
    asked = max(map(asked_in_all, (before, after))), max(len(before.lifts), len(after.lifts))
    return found._replace(chains=chains, paths=paths, asked=(asked[0] * len(kits), asked[1] * len(kits)))
