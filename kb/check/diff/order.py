"""What moved between two orders of the same things."""

from collections.abc import Sequence

__all__ = ["moved"]


def moved(before: Sequence[str], after: Sequence[str]) -> tuple[str, ...]:
    """Of what stands in both orders, the fewest whose moving makes one of the other, in id order.

    They are what a longest common subsequence leaves out; of several as long the first by its ids, so that the
    answer is the same whichever order is the older.

    >>> moved(["hold", "pull", "lift"], ["pull", "hold", "lift"])
    ('pull',)
    """
    shared = set(before) & set(after)
    a = [each for each in dict.fromkeys(before) if each in shared]
    b = [each for each in dict.fromkeys(after) if each in shared]
    kept = set(_common(a, b))
    return tuple(sorted(each for each in a if each not in kept))


def _common(a: Sequence[str], b: Sequence[str]) -> tuple[str, ...]:
    """The longest common subsequence, of several the first by ids; worked out from the ends."""
    rows: list[list[tuple[str, ...]]] = [[()] * (len(b) + 1) for _ in range(len(a) + 1)]
    for n in reversed(range(len(a))):
        for k in reversed(range(len(b))):
            found = [rows[n + 1][k], rows[n][k + 1]]
            if a[n] == b[k]:
                found.append((a[n], *rows[n + 1][k + 1]))
            rows[n][k] = min(found, key=lambda each: (-len(each), each))
    return rows[0][0]
