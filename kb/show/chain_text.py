"""A chain on a terminal: the answer first, then each drill, then what belongs to all of them."""

from collections.abc import Iterator

from kb import dose
from kb.ask.chain import Chain
from kb.ask.matter import Matter
from kb.ask.rehearse import Rehearsal
from kb.ask.route import Route
from kb.ask.shelf import Shelf
from kb.ask.sittings import sitting_seconds
from kb.show.bars import bands_of, route_bars
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL
from kb.show.chart import chart
from kb.show.coach_words import LOADS, duration, either, human, listed
from kb.show.entry_lines import entry_lines
from kb.show.setting import Setting, aside, hanging, titled, wrapped
from kb.show.tell_lines import tell_lines
from kb.terms import Load

__all__ = ["chain_text", "no_chain_text"]

SLOW = {
    "strength": "Strength comes slowly: weeks, not a session. Keep the chain and add these after training:",
    "mobility": "Mobility comes slowly: weeks of a little most days, not a session.",
}
"""What to say of causes that no session mends."""


def chain_text(chain: Chain, kit: str | None, setting: Setting, *, named: bool) -> list[str]:
    """A chain in lines.

    `kit` is None where the question listed what there is; `named` whether it named the cause: then how to
    tell the causes apart is left to `show`.
    """
    matter, (best, *more) = chain.matter, chain.routes
    lines = [*_title(matter, best, kit, setting), *_because(matter, setting, named=named)]
    if not named:
        lines += tell_lines(matter.fault, setting)
        others = [cause.id for cause in matter.fault.causes if cause.id != matter.cause.id]
        lines += wrapped(f"If it is another, ask again with --cause {either(others)}.", setting.width) if others else []
    lines += ["", *_chart(matter, best, setting), *_sittings(best, setting), *_proved(best, setting)]
    seen: set[str] = set()
    lines += _entries(matter, best, seen, setting)
    for n, other in enumerate(more, 2):
        lines += titled(f"Way {n}, {dose.minutes(other.seconds)} min", _chart(matter, other, setting), setting)
        lines += _entries(matter, other, seen, setting, known=best)
    return [*lines, *_finish(chain, setting), *closing(setting, ask_first=_heavy(matter, chain.routes))]


def closing(setting: Setting, *, ask_first: bool) -> list[str]:
    """The lines at the end of every answer that someone may act on."""
    texts = [USUAL, *([ASK_FIRST] if ask_first else []), NO_REVIEW]
    return ["", *(line for text in texts for line in wrapped(text, setting.width))]


def _title(matter: Matter, route: Route, kit: str | None, setting: Setting) -> list[str]:
    load = "light bar" if matter.load is Load.LIGHT else LOADS[matter.load]
    facts = (matter.shelf.lift.name.lower(), load, f"{kit} kit" if kit else "your gear")
    return aside(matter.fault.name, setting.between.join([*facts, f"{dose.minutes(route.seconds)} min"]), setting)


def _because(matter: Matter, setting: Setting, *, named: bool) -> list[str]:
    cause = matter.cause
    taken = "" if named else ", the commonest cause"
    lines = hanging("", f"Because: {human(cause.id)} ({human(cause.kind)}{taken}). {cause.text}", setting)
    if matter.worked.id != matter.fault.id:
        worked = f"{matter.worked.name} ({human(matter.worked_cause.id)})"
        lines += hanging("", f"So the chain works on what comes before it: {worked}.", setting)
    return lines


def _chart(matter: Matter, route: Route, setting: Setting) -> list[str]:
    lift = matter.shelf.lift
    return chart(lift, route_bars(route, lift), setting, bands=bands_of(matter.worked, lift))


def _sittings(route: Route, setting: Setting) -> list[str]:
    if len(route.sittings) < 2:
        return []
    parts = [
        f"drills {first + 1} to {end} ({dose.minutes(sitting_seconds(route.entries, first, end))} min)"
        for first, end in route.sittings
    ]
    said = f"{len(parts)} sittings: {'; then '.join(parts)}."
    return ["", *wrapped(f"{said} Each begins with the last drill of the one before, as a check.", setting.width)]


def _proved(route: Route, setting: Setting) -> list[str]:
    if route.optimal or not route.proved:
        return []
    return ["", *wrapped(f"Not proved the best order: a better one could cost {route.gap:.0%} less.", setting.width)]


def _entries(
    matter: Matter, route: Route, seen: set[str], setting: Setting, *, known: Route | None = None
) -> Iterator[str]:
    """Each drill's lines; a drill at a load that `known` has already is left to it."""
    told = {(entry.drill.id, entry.load, entry.work) for entry in known.entries} if known else set()
    for n, entry in enumerate(route.entries, 1):
        if (entry.drill.id, entry.load, entry.work) in told:
            continue
        yield ""
        yield from entry_lines(
            n,
            entry,
            matter.shelf.lift,
            have=matter.question.have,
            items=matter.shelf.items,
            seen=seen,
            setting=setting,
        )


def _finish(chain: Chain, setting: Setting) -> list[str]:
    slow = SLOW.get(chain.matter.worked_cause.kind)
    names = [drill.name for drill in chain.finish]
    if slow is None and not names:
        return []
    text = slow or "After training, for strength:"
    return ["", *wrapped(f"{text} {listed(names)}{'.' if names else ''}".strip(), setting.width)]


def _heavy(matter: Matter, routes: tuple[Route, ...]) -> bool:
    """Whether the breath is held under load, or a drill isn't for everyone."""
    return matter.load is Load.WORKING or any(
        entry.drill.not_for or "breath" in entry.drill.cautions for route in routes for entry in route.entries
    )


def no_chain_text(shelf: Shelf, rehearsal: Rehearsal | None, kit: str | None, setting: Setting) -> list[str]:
    """What can be rehearsed where there is no chain, and the smallest thing that would open one."""
    if rehearsal is None or not (rehearsal.drills or rehearsal.would_open):
        return []
    lines: list[str] = []
    if rehearsal.drills:
        lines += wrapped("What can be rehearsed, though nothing here shows whether the fault is gone:", setting.width)
        for drill in rehearsal.drills:
            lines += hanging("  - ", f"{drill.name} ({duration(dose.work_seconds(drill))}); `show {drill.id}`", setting)
    openers = [
        shelf.drills[opener.prerequisite].name
        if opener.prerequisite is not None
        else listed([shelf.items[item].name.lower() for item in opener.items])
        for opener in rehearsal.would_open
    ]
    if openers:
        first = (
            "To hold this first would open a chain" if rehearsal.would_open[0].prerequisite else "A chain needs only"
        )
        with_kit = f" with the {kit} kit" if kit else ""
        lines += wrapped(f"{first}{with_kit}: {either(openers)}.", setting.width)
    return [*lines, *closing(setting, ask_first=False)]
