"""A piece of equipment: what it must be, what can serve for it, what is done with it."""

from typing import NamedTuple

from kb.show.as_json import show_json
from kb.show.page.page import Link, Page
from kb.show.page.stock import Stock
from kb.terms import Item, ItemId

__all__ = ["ItemShown", "equipment_page"]


class ItemShown(NamedTuple):
    """What a piece of equipment's page holds."""

    item: Item
    kits: tuple[str, ...]
    stand_ins: tuple[Link, ...]
    stands_for: tuple[Link, ...]
    drills: tuple[Link, ...]


def equipment_page(stock: Stock, item_id: str) -> Page:
    """The page of a piece of equipment; KeyError if there is none of that id."""
    item = stock.items[ItemId(item_id)]
    held = ItemShown(
        item,
        tuple(kit for kit in stock.kits_by_size() if item.id in stock.kits[kit]),
        tuple(Link(stock.name(each.item), "equipment", each.item, each.lost) for each in item.stand_ins),
        tuple(
            Link(other.name, "equipment", other.id, each.lost)
            for other in stock.items.values()
            for each in other.stand_ins
            if each.item == item.id
        ),
        tuple(Link(drill.name, "drill", drill.id) for drill in stock.drills.values() if item.id in drill.equipment),
    )
    return Page(f"equipment/{item.id}", item.name, "equipment", held, data=show_json("equipment", item))
