"""Partial lists of nodes as a search grows them."""

from kb.ask.field import Band, Field

__all__ = ["START", "Label", "come_back_to"]

START = -1
"""The node of a label that has none yet."""


class Label:
    """A partial list: its last node, what it cost and used, and the label it grew from.

    `least` is shared by all that hold, used, addressed and last covered the same: by node, what the cheapest that went
    on from one of these to there cost.
    """

    __slots__ = (
        "addressed",
        "band",
        "bound",
        "cost",
        "entries",
        "held",
        "least",
        "node",
        "parent",
        "seconds",
        "used",
        "work",
    )

    def __init__(self, node: int, parent: "Label | None") -> None:
        self.node = node
        self.parent = parent
        self.cost = self.held = self.used = self.entries = self.work = self.seconds = self.bound = 0
        self.addressed = False
        self.band: Band | None = None
        self.least: dict[int, int] = {}

    def nodes(self) -> tuple[int, ...]:
        """Its nodes from first to last."""
        found = []
        label: Label | None = self
        while label is not None and label.node != START:
            found.append(label.node)
            label = label.parent
        return tuple(reversed(found))


def come_back_to(field: Field, nodes: tuple[int, ...]) -> list[int]:
    """Drills that a list does again without a higher load."""
    most: dict[int, int] = {}
    again = []
    for node in nodes:
        drill, load = field.drill[node], field.load[node]
        if most.get(drill, -1) >= load:
            again.append(drill)
        most[drill] = max(load, most.get(drill, -1))
    return sorted(set(again))
