"""The files that all pages share: stylesheet, scripts, the index they run on, drawings of graphs, figures."""

import sqlite3
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path

from kb.show.figure.write import Drawable, figure_texts
from kb.show.page.content.graph import graph_script
from kb.show.page.index_script import chains_script, index_script
from kb.show.page.offline import manifest
from kb.show.page.pages import Answers
from kb.show.page.stock import Stock
from kb.terms import LiftId

__all__ = ["ASSETS", "drawn", "names_of", "shared_file", "shared_names"]

ASSETS = Path(__file__).parent / "assets"
"""Files that are the same whatever the library."""

DRAWER = "vis-network.min.js"
"""What draws the graphs; it comes with pyvis, under the MIT and Apache-2.0 licences, and its licence is in it."""


def names_of(stock: Stock, answers: Answers) -> dict[str, str]:
    """The page of every prepared question, "fault cause lift kit"."""
    return {
        f"{fault} {cause} {lift} {kit}": name
        for fault in stock.faults
        for (cause, lift, kit), name in answers(fault).names.items()
    }


def drawn(stock: Stock) -> dict[str, str]:
    """Every figure, by its file's name."""
    return figure_texts(Drawable(stock.positions, stock.faults, stock.drills, stock.lifts))


def shared_names(stock: Stock, figures: dict[str, str]) -> Iterator[str]:
    """The address of every shared file, from the folder that holds all pages."""
    yield "manifest.webmanifest"
    yield from (f"assets/{file.name}" for file in sorted(ASSETS.iterdir()) if file.name != "keep.js")
    yield from ("assets/index.js", "assets/chains.js", f"assets/{DRAWER}")
    yield from (f"assets/graph-{lift}.js" for lift in stock.lifts)
    yield from (f"figures/{name}" for name in sorted(figures))


def shared_file(name: str, db: sqlite3.Connection, stock: Stock, answers: Answers, figures: dict[str, str]) -> bytes:
    """What a shared file holds; KeyError if there is none at that address."""
    folder, _, file = name.rpartition("/")
    if name == "manifest.webmanifest":
        return manifest().encode()
    if folder == "figures":
        return figures[file].encode()
    if folder != "assets" or not file or file.startswith("."):
        raise KeyError(name)
    if file == "index.js":
        return index_script(db, stock).encode()
    if file == "chains.js":
        return chains_script(names_of(stock, answers)).encode()
    if file == DRAWER:
        return (files("pyvis") / "lib" / "vis-9.1.2" / DRAWER).read_bytes()
    if file.startswith("graph-") and file.endswith(".js"):
        lift = LiftId(file.removeprefix("graph-").removesuffix(".js"))
        if lift in stock.lifts:
            return graph_script(stock, lift).encode()
    path = ASSETS / file
    if path.parent != ASSETS or not path.is_file():
        raise KeyError(name)
    return path.read_bytes()
