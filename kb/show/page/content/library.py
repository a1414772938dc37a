"""The library's health: what no chain reaches, faults thin on drills, kits without cover, bottlenecks, likenesses."""

from collections import Counter
from collections.abc import Callable
from typing import NamedTuple

from kb.check.near_duplicate import resemblance
from kb.show.coach_words import human
from kb.show.page.page import Link, Page
from kb.show.page.prepared import Prepared
from kb.show.page.stock import Stock
from kb.terms import DrillId, FaultId

__all__ = ["Cover", "Health", "library_page"]

MOST = 12
"""Rows of a list that could go on."""


class Cover(NamedTuple):
    """A kit, how many questions it answers, and those it doesn't, as far as no larger kit lacks them too."""

    kit: str
    answered: int
    asked: int
    missing: tuple[Link, ...]


class Health(NamedTuple):
    """What the page of the library's health holds."""

    counts: tuple[tuple[str, int], ...]
    unused: tuple[Link, ...]
    thin: tuple[Link, ...]
    covers: tuple[Cover, ...]
    gateways: tuple[tuple[Link, tuple[Link, ...]], ...]
    busiest: tuple[tuple[Link, int], ...]
    alike: tuple[tuple[Link, Link, int], ...]


def library_page(stock: Stock, answers: Callable[[FaultId], Prepared]) -> Page:
    """The page of the library's health, from the answers to every default question."""
    in_chains = Counter[DrillId]()
    for fault in stock.faults:
        for asked in answers(fault).answers.values():
            if asked.found is not None:
                in_chains.update({entry.drill.id for entry in asked.found.routes[0].entries})
                in_chains.update({drill.id for drill in asked.found.finish})
    used = set(in_chains) | _on_paths(stock)
    pairs = resemblance(stock.drills)
    likest = sorted(pairs.items(), key=lambda pair: (-pair[1][0] / pair[1][1], pair[0]))
    held = Health(
        counts=(
            ("lifts", len(stock.lifts)),
            ("positions", len(stock.positions)),
            ("faults", len(stock.faults)),
            ("causes", sum(len(fault.causes) for fault in stock.faults.values())),
            ("drills", len(stock.drills)),
            ("things of equipment", len(stock.items)),
        ),
        unused=tuple(_drill(stock, drill) for drill in stock.drills if drill not in used),
        thin=tuple(_thin(stock)),
        covers=_each_once([_cover(stock, kit, answers) for kit in stock.kits_by_size()]),
        gateways=tuple(
            (Link(lift.name, "lift", lift.id), tuple(_drill(stock, drill) for drill in sorted(stock.gateways[lift.id])))
            for lift in stock.lifts.values()
        ),
        busiest=tuple((_drill(stock, drill), count) for drill, count in in_chains.most_common(MOST)),
        alike=tuple(
            (_drill(stock, one), _drill(stock, other), 100 * both // total)
            for (one, other), (both, total) in likest[:MOST]
        ),
    )
    return Page("library", "The library's health", "library", held)


def _drill(stock: Stock, drill_id: str) -> Link:
    return Link(stock.name(drill_id), "drill", drill_id)


def _on_paths(stock: Stock) -> set[DrillId]:
    """Drills that a path from nothing takes, whatever the kit."""
    found: set[DrillId] = set()
    for lift in stock.lifts:
        for kit in stock.kits:
            way = stock.way(lift, kit)
            found.update(() if isinstance(way, str) else (entry.drill.id for entry in way.entries))
    return found


def _thin(stock: Stock) -> list[Link]:
    """Causes that one drill or none works on."""
    works = Counter[tuple[FaultId, str]]()
    for drill in stock.drills.values():
        for said in dict.fromkeys(drill.faults):
            causes = [said.cause] if said.cause else [cause.id for cause in stock.faults[said.fault].causes]
            works.update((said.fault, cause) for cause in causes)
    return [
        Link(fault.name, "fault", fault.id, f"{human(cause.id)}: {works[fault.id, cause.id]}")
        for fault in stock.faults.values()
        for cause in fault.causes
        if cause.kind != "earlier" and works[fault.id, cause.id] < 2
    ]


def _cover(stock: Stock, kit: str, answers: Callable[[FaultId], Prepared]) -> Cover:
    asked, missing = 0, []
    for fault in stock.faults.values():
        prepared = answers(fault.id)
        for (cause, lift, with_kit), name in prepared.names.items():
            if with_kit == kit:
                asked += 1
                if prepared.answers[name].found is None:
                    missing.append(Link(fault.name, "chain", name, f"{human(cause)}, {lift}"))
    return Cover(kit, asked - len(missing), asked, tuple(missing))


def _each_once(covers: list[Cover]) -> tuple[Cover, ...]:
    """What a kit lacks is listed with the last kit that lacks it, so that each question stands once on the page."""
    found: list[Cover] = []
    listed: set[tuple[str, str]] = set()
    for cover in reversed(covers):
        new = tuple(link for link in cover.missing if (link.words, link.beside) not in listed)
        listed.update((link.words, link.beside) for link in new)
        found.append(cover._replace(missing=new))
    return tuple(reversed(found))
