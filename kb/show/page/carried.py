"""Answers on their way from one process to another: what both have already is only named."""

import pickle
from io import BytesIO
from typing import Any

from kb.ask.shelf import Shelf
from kb.show.page.stock import Stock
from kb.terms import Drill

__all__ = ["packed", "unpacked"]


class _Packer(pickle.Pickler):
    def __init__(self, file: BytesIO, stock: Stock) -> None:
        super().__init__(file, pickle.HIGHEST_PROTOCOL)
        self.stock = stock

    def persistent_id(self, thing: object) -> tuple[str, str] | None:
        """A shelf's lift, or a drill's id, for what the other process's stock has too."""
        if isinstance(thing, Shelf):
            return "shelf", thing.lift.id
        if isinstance(thing, Drill) and self.stock.drills.get(thing.id) is thing:
            return "drill", thing.id
        return None


class _Unpacker(pickle.Unpickler):
    def __init__(self, file: BytesIO, stock: Stock) -> None:
        super().__init__(file)
        self.stock = stock

    def persistent_load(self, named: tuple[str, str]) -> Shelf | Drill:
        """The reader's own of what was named."""
        kind, name = named
        return self.stock.shelves[name] if kind == "shelf" else self.stock.drills[name]  # type: ignore[index]


def packed(answers: object, stock: Stock) -> bytes:
    """Answers made from a stock, without what is in it."""
    file = BytesIO()
    _Packer(file, stock).dump(answers)
    return file.getvalue()


def unpacked(data: bytes, stock: Stock) -> Any:
    """What this program `packed`, made whole from a stock of the same catalogue."""
    return _Unpacker(BytesIO(data), stock).load()
