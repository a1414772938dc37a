"""The shortest circles of a graph: what rules show when things go round."""

from collections import deque
from collections.abc import Collection, Iterator, Mapping

__all__ = ["circles"]

_TRIED = 300
"""Of a tangle larger than this only so many starts are tried, so that no library, however broken, takes for ever."""


def circles(edges: Mapping[str, Collection[str]]) -> Iterator[tuple[str, ...]]:
    """Shortest circles, one after another, until none is left when those found are taken away.

    Each begins at its first id in order; no id is in two, so that one mistake isn't told many times.

    >>> list(circles({"a": ["b"], "b": ["c"], "c": ["a", "b"], "d": ["d"], "e": ["d"]}))
    [('d',), ('b', 'c')]
    """
    left = {node: [to for to in others if to in edges] for node, others in edges.items()}
    while left := _peeled(left):
        found = [_through(node, left) for node in sorted(left)[:_TRIED]]
        shortest = min((circle for circle in found if circle), key=lambda circle: (len(circle), circle), default=None)
        if shortest is None:  # the starts tried only lead to a circle; others are on it
            left = {node: to for node, to in left.items() if node not in sorted(left)[:_TRIED]}
            continue
        begin = shortest.index(min(shortest))
        yield shortest[begin:] + shortest[:begin]
        left = {node: to for node, to in left.items() if node not in shortest}


def _peeled(edges: Mapping[str, Collection[str]]) -> dict[str, list[str]]:
    """The graph without what leads nowhere: what is left is on a circle, or leads to one."""
    into: dict[str, list[str]] = {node: [] for node in edges}
    out = {}
    for node, others in edges.items():
        inside = [to for to in others if to in edges]
        out[node] = len(inside)
        for to in inside:
            into[to].append(node)
    ends = [node for node, count in out.items() if not count]
    gone = set(ends)
    while ends:
        for node in into[ends.pop()]:
            out[node] -= 1
            if not out[node] and node not in gone:
                gone.add(node)
                ends.append(node)
    return {
        node: [to for to in others if to in edges and to not in gone]
        for node, others in edges.items()
        if node not in gone
    }


def _through(start: str, edges: Mapping[str, Collection[str]]) -> tuple[str, ...]:
    """A shortest circle through `start`, beginning there; empty if there is none."""
    came: dict[str, str] = {}
    queue = deque([start])
    while queue:
        node = queue.popleft()
        for to in sorted(edges[node]):
            if to == start:
                back = [node]
                while back[-1] != start:
                    back.append(came[back[-1]])
                return tuple(reversed(back))
            if to not in came:
                came[to] = node
                queue.append(to)
    return ()
