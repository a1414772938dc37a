"""Every page that is prepared: its address, and the function that fills it."""

from collections.abc import Callable, Iterable, Iterator

from kb.show.page.content.ask import ask_page
from kb.show.page.content.at_hand import at_hand_page, kit_page
from kb.show.page.content.chain import chain_page
from kb.show.page.content.class_ import class_page
from kb.show.page.content.drill import drill_page
from kb.show.page.content.drills import drills_page
from kb.show.page.content.equipment import equipment_page
from kb.show.page.content.fault import fault_page
from kb.show.page.content.faults import faults_page
from kb.show.page.content.find import empty_page
from kb.show.page.content.graph import graph_page, graphs_page
from kb.show.page.content.home import home_page
from kb.show.page.content.library import library_page
from kb.show.page.content.lift import lift_page
from kb.show.page.content.lifts import lifts_page
from kb.show.page.content.path import path_page, paths_of
from kb.show.page.content.plan import names_of_plans, plan_page
from kb.show.page.content.position import position_page
from kb.show.page.content.session import session_page, sessions_of
from kb.show.page.page import Page
from kb.show.page.prepared import Prepared
from kb.show.page.stock import Stock
from kb.terms import FaultId

__all__ = ["HEALTH", "Answers", "entry_paths", "fault_paths", "page_at", "paths"]

Answers = Callable[[FaultId], Prepared]
"""A fault's answers; whoever asks for pages keeps them."""

Maker = Callable[[Stock, Answers, str], Page]

ALONE: dict[str, Callable[[Stock], Page]] = {
    "home": home_page,
    "faults": faults_page,
    "lifts": lifts_page,
    "drills": drills_page,
    "ask": ask_page,
    "find": lambda _: empty_page(),
    "at-hand": lambda stock: at_hand_page(stock, None),
    "graph": graphs_page,
    "class": class_page,
}
"""Pages of which there is one."""

HEALTH = "library"
"""The page that needs every question answered."""

NAMED: dict[str, Maker] = {
    "fault": lambda stock, answers, name: fault_page(stock, name, answers(FaultId(name))),
    "chain": lambda stock, answers, name: chain_page(stock, name, answers(FaultId(name.partition(".")[0]))),
    "drill": lambda stock, _, name: drill_page(stock, name),
    "position": lambda stock, _, name: position_page(stock, name),
    "lift": lambda stock, _, name: lift_page(stock, name),
    "equipment": lambda stock, _, name: equipment_page(stock, name),
    "graph": lambda stock, _, name: graph_page(stock, name),
    "at-hand": lambda stock, _, name: kit_page(stock, name),
    "path": lambda stock, _, name: path_page(stock, name),
    "session": lambda stock, answers, name: session_page(stock, name, answers(FaultId(name.partition(".")[0]))),
    "plan": lambda stock, _, name: plan_page(stock, name),
}
"""Pages of which there is one for each entry or answer."""


def entry_paths(stock: Stock) -> Iterator[str]:
    """The address of every page that needs no question answered, in one order."""
    yield from ALONE
    tables: dict[str, Iterable[str]] = {
        "drill": stock.drills,
        "position": stock.positions,
        "lift": stock.lifts,
        "graph": stock.lifts,
        "equipment": stock.items,
        "at-hand": stock.kits,
        "plan": [name for lift in stock.lifts for name in names_of_plans(stock, lift)],
        "path": [name for lift in stock.lifts for name in paths_of(stock, lift)],
    }
    for kind, table in tables.items():
        yield from (f"{kind}/{name}" for name in sorted(table))


def fault_paths(stock: Stock, fault: FaultId, answers: Answers) -> Iterator[str]:
    """The address of a fault's page, of each of its chains and of each of its sessions."""
    prepared = answers(fault)
    yield f"fault/{fault}"
    yield from (f"chain/{name}" for name in prepared.answers)
    yield from (f"session/{name}" for name in sessions_of(stock, stock.faults[fault], prepared))


def paths(stock: Stock, answers: Answers) -> Iterator[str]:
    """The address of every prepared page, in one order."""
    yield from entry_paths(stock)
    for fault in stock.faults:
        yield from fault_paths(stock, fault, answers)
    yield HEALTH


def page_at(path: str, stock: Stock, answers: Answers) -> Page:
    """The prepared page of an address; KeyError if there is none."""
    if path in ALONE:
        return ALONE[path](stock)
    if path == HEALTH:
        return library_page(stock, answers)
    kind, _, name = path.partition("/")
    return NAMED[kind](stock, answers, name)
