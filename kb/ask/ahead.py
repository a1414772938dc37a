"""Whether the goal can still be come to from what is held: a list must not walk into a dead end.

What an order has passed can't be gone back to, nor can preparation; a list that lacks something of these
that the goal still needs is dropped as soon as that is so, whatever it would cost to go on.
"""

from collections.abc import Iterable

from kb.ask.field import Band, Field

__all__ = ["Ahead"]

Giver = tuple[tuple[int, ...], int]
"""A drill that others need: the groups that it needs itself, and the bit it gives."""


class Ahead:
    """One field's givers, by the stretch of each, and the answers known already."""

    def __init__(self, field: Field) -> None:
        self.field = field
        bands = field.band or (None,) * len(field.drill)
        rows = list(zip(field.groups, field.gains, field.prepares, bands, strict=True))
        self.prepares = _givers((groups, gain) for groups, gain, prepares, _ in rows if prepares)
        self.free = _givers((groups, gain) for groups, gain, prepares, own in rows if own is None and not prepares)
        self.stretches = field.stretches()
        self.bound = {
            band: _givers((groups, gain) for groups, gain, _, own in rows if own == band) for band in self.stretches
        }
        self._known: dict[tuple[bool, Band | None, int], bool] = {}

    def leads(self, node: int, band: Band | None, held: int) -> bool:
        """Whether some list, however dear, leads on from a node, after a stretch, with these bits held.

        It may say yes wrongly, where stretches that don't follow one another would both be needed; never no.
        """
        key = (self.field.prepares[node], band, held)
        if key not in self._known:
            self._known[key] = self._leads(*key)
        return self._known[key]

    def _leads(self, prepares: bool, band: Band | None, held: int) -> bool:
        if prepares:
            held = _grown(self.prepares, held)
        held = _grown(self.free, held)
        for after in self.stretches:
            if band is None or self.field.in_order(band, after):
                held = _grown(self.free + self.bound[after], held)
        return all(group & held for group in self.field.groups[self.field.goal])


def _givers(rows: Iterable[Giver]) -> list[Giver]:
    return sorted({(groups, gain) for groups, gain in rows if gain})


def _grown(givers: list[Giver], held: int) -> int:
    """What is held once all that can be done of some drills has been."""
    while True:
        before = held
        for groups, gain in givers:
            if not gain & held and all(group & held for group in groups):
                held |= gain
        if held == before:
            return held
