"""A chain on a terminal: the answer first, then each drill, then what belongs to all of them."""

from collections.abc import Collection, Iterator, Sequence

from kb import dose
from kb.ask.chain import Chain
from kb.ask.instead import Instead
from kb.ask.leads import LEADS
from kb.ask.matter import Matter
from kb.ask.route import Entry, Route
from kb.ask.shelf import Shelf
from kb.ask.sittings import sitting_seconds
from kb.kit import STICKS
from kb.show.at_stick import at_stick_said
from kb.show.bars import bands_of, route_bars
from kb.show.beside import beside_said, taken_said
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL, asks_first, begun
from kb.show.chain_said import (
    NO_SPLIT,
    NO_STICK,
    UNSURE,
    UNTIL,
    UNTOLD,
    after_said,
    heavier_said,
    only_heavy,
    others_said,
)
from kb.show.chart import chart
from kb.show.coach_words import LOADS, human, throughout_said
from kb.show.entry_lines import entry_lines
from kb.show.heavy import Heavy, shares
from kb.show.instead_text import by_turns_text, instead_text, too_text
from kb.show.look_first import look_first
from kb.show.openers import also_opens, meanwhile
from kb.show.over_weeks import AFTER_THE_DAY, FRESH_WEEKS, over_weeks
from kb.show.prose import prose
from kb.show.setting import Setting, aside, hanging, titled, wrapped
from kb.show.tell_lines import tell_lines
from kb.show.telling import Telling
from kb.show.time_left import time_left
from kb.terms import Fault, ItemId, Load

__all__ = [
    "chain_text",
    "closing",
    "entry_told",
    "looked_first",
    "opening",
    "said_text",
]


def chain_text(
    chain: Chain,
    kit: str | None,
    setting: Setting,
    *,
    named: bool,
    others: Sequence[Instead] = (),
    telling: Telling = Telling(),  # noqa: B008
) -> list[str]:
    """A chain in lines.

    `kit` is None where the question listed what there is; `named` whether it named the cause: then how to
    tell the causes apart stands after the drills, with what the `others` call for. Where one of what is to be looked at
    first leads the telling, the rest of that stands after the drills.
    """
    matter, (best, *more) = chain.matter, chain.routes
    first, heavy = telling.first, telling.weighs(matter.cause)
    lines = _title(matter, best, kit, setting)
    lines += _before_the_drills(matter, setting, telling, named=named, others=bool(others))
    lines += wrapped(meanwhile(best), setting.width) if matter.worked_cause.kind == "mobility" else []
    lines += ["", *_chart(matter, best, setting), *_sittings(best, setting), *_proved(best, setting)]
    if not matter.question.have & {*STICKS}:
        lines += ["", *wrapped(NO_STICK, setting.width)]
    only_stick = at_stick_said(matter, best)
    lines += ["", *wrapped(only_stick, setting.width)] if only_stick else []
    seen = begun(gear for entry in best.entries for gear in entry.gear)
    lines += _entries(matter, best, seen, setting, heavy)
    opens = also_opens(matter, best, setting)
    lines += ["", *wrapped(opens, setting.width)] if opens else []
    for n, other in enumerate(more, 2):
        lines += titled(f"Way {n}, {dose.minutes(other.seconds)} min", _chart(matter, other, setting), setting)
        lines += _entries(matter, other, seen, setting, heavy, known=best)
    found = [other for other in others if other.cause.id in telling.also_causes]
    lines += by_turns_text(found, best.entries, seen, setting)
    lines += time_left(matter.question.seconds, best, telling.session, setting)
    heavier = heavier_said(matter) if not telling.shows_from else ""
    lines += ["", *wrapped(heavier, setting.width)] if heavier else []
    if telling.weeks is not None or matter.worked_cause.kind != "mobility":
        stages = over_weeks(telling.weeks, matter.fault.gone)
        lines += ["", *(line for text in stages for line in wrapped(text, setting.width))]
    lines += ["", *wrapped(NO_SPLIT, setting.width)] if _splits(matter) else []
    if telling.weeks is None or telling.weeks > FRESH_WEEKS:
        lines += _finish(chain, seen, setting, heavy)
    elif after_said(chain):
        lines += ["", *wrapped(AFTER_THE_DAY, setting.width)]
    lines += looked_first(matter.fault, setting, first) if first is not None else []
    told = [*best.entries, *chain.strengthen]
    for beside in telling.besides:
        if beside.about is not None and beside.chain is not None:
            lines += too_text(beside.about, beside.chain, told, seen, setting)
    rest = [other for other in others if other.cause.id not in telling.also_causes]
    checks = tell_lines(matter.fault, setting, shows_from=only_heavy(matter, telling)) if named and rest else []
    lines += [*checks, *instead_text(rest, told, seen, setting)]
    entries = [entry.drill for part in (*(route.entries for route in chain.routes), chain.strengthen) for entry in part]
    return [*lines, *closing(setting, ask_first=matter.load is Load.WORKING or asks_first(entries))]


def _before_the_drills(matter: Matter, setting: Setting, telling: Telling, *, named: bool, others: bool) -> list[str]:
    """The cause, the checks where none was named, and what to look at first; the checks lead where they are to."""
    looks = looked_first(matter.fault, setting) if telling.first is None else []
    checks = [] if named else tell_lines(matter.fault, setting, shows_from=only_heavy(matter, telling))
    checks += wrapped("If it is another, its drills stand after these.", setting.width) if others and not named else []
    if not checks or not telling.checks_first:
        return [*opening(matter, setting, telling, named=named), *checks, *looks]
    lines = opening(matter, setting, telling, named=named, because=False)
    lines += ["", *wrapped(UNSURE if telling.cause_named else UNTOLD, setting.width), *checks, *looks, ""]
    return lines + _because(matter, setting, taken="the commonest", helped=telling.helped, lead=UNTIL)


def opening(matter: Matter, setting: Setting, telling: Telling, *, named: bool, because: bool = True) -> list[str]:
    """What comes before the checks: a care, what leads, why it happens, what was seen too, who is asked about.

    `because` tells why it happens, and what is kept to in every drill.
    """
    lines = [*hanging("! ", telling.caution, setting), ""] if telling.caution else []
    lines += [*prose(telling.leads, setting), ""] if telling.leads else []
    doubts = [text for text in telling.minds if text.startswith(LEADS)]
    lines += [line for text in doubts for line in [*wrapped(text, setting.width), ""]]
    commonest = matter.cause.id == matter.fault.causes[0].id
    taken = "" if named or telling.cause_named else taken_said(telling.besides, commonest=commonest)
    lines += _because(matter, setting, taken=taken, helped=telling.helped) if because else []
    lines += [line for text in telling.advice for line in wrapped(text, setting.width)]
    lines += [line for text in map(beside_said, telling.besides) for line in wrapped(text, setting.width)]
    lines += [line for text in telling.numbers for line in wrapped(text, setting.width)]
    return lines + said_text("", [text for text in telling.minds if text not in doubts], setting)


def said_text(caution: str, minds: Sequence[str], setting: Setting) -> list[str]:
    """A care that what was said of the lifter calls for, and what to mind because of it."""
    lines = [*hanging("! ", caution, setting), ""] if caution else []
    told = [line for text in minds for line in hanging("  - ", text, setting)]
    return lines + titled("For this lifter", told, setting)


def _splits(matter: Matter) -> bool:
    """Whether the lift that the chain ends in passes the split."""
    points, goal = matter.shelf.lift.points, matter.shelf.dials[matter.shelf.lift.drill]
    return "split" in points[goal.first : goal.last + 1] and not goal.left_out >> points.index("split") & 1


def closing(setting: Setting, *, ask_first: bool) -> list[str]:
    """The lines at the end of every answer that someone may act on."""
    texts = [USUAL, *([ASK_FIRST] if ask_first else []), NO_REVIEW]
    return ["", *(line for text in texts for line in wrapped(text, setting.width))]


def looked_first(fault: Fault, setting: Setting, first: int | None = None) -> list[str]:
    """What a coach looks at before any drill, save what leads; nothing where the fault doesn't say or has no text."""
    text = look_first(fault, without=first)
    title = "Look first" if first is None else "Else look at"
    return titled(title, prose(text, setting, indent=2), setting) if text else []


def _title(matter: Matter, route: Route, kit: str | None, setting: Setting) -> list[str]:
    load = "light bar" if matter.load is Load.LIGHT else LOADS[matter.load]
    facts = (matter.shelf.lift.name.lower(), load, f"{kit} kit" if kit else "your gear")
    each = [str(dose.minutes(sitting_seconds(route.entries, first, end))) for first, end in route.sittings]
    long = f"{dose.minutes(route.seconds)} min" if len(each) < 2 else f"sittings of {' and '.join(each)} min"
    return aside(matter.fault.name, setting.between.join([*facts, long]), setting)


def _because(matter: Matter, setting: Setting, *, taken: str, helped: str, lead: str = "Because") -> list[str]:
    """Why it happens, and what is kept to in every drill."""
    cause = matter.cause
    kept = wrapped(throughout_said(cause, matter.worked_cause, helped=helped), setting.width)
    kind = f"{human(cause.kind)}, {taken}" if taken else human(cause.kind)
    lines = hanging("", f"{lead}: {human(cause.id)} ({kind}). {cause.text}", setting)
    if matter.worked.id != matter.fault.id:
        worked = f"{matter.worked.name} ({human(matter.worked_cause.id)})"
        lines += hanging("", f"So the chain works on what comes before it: {worked}.", setting)
    return [*lines, *kept]


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
    matter: Matter, route: Route, seen: set[str], setting: Setting, heavy: Heavy, *, known: Route | None = None
) -> Iterator[str]:
    """Each drill's lines; a drill at a load that `known` has already is left to it."""
    told = {(entry.drill.id, entry.load, entry.work) for entry in known.entries} if known else set()
    for n, entry in enumerate(route.entries, 1):
        if (entry.drill.id, entry.load, entry.work) in told:
            continue
        yield from entry_told(n, entry, matter.shelf, matter.question.have, seen, setting, heavy)


def entry_told(
    n: int,
    entry: Entry,
    shelf: Shelf,
    have: Collection[ItemId],
    seen: set[str],
    setting: Setting,
    heavy: Heavy = shares,
) -> list[str]:
    """A drill's lines, with white above them."""
    told = entry_lines(n, entry, shelf.lift, have=have, items=shelf.items, seen=seen, setting=setting, heavy=heavy)
    return ["", *told]


def _finish(chain: Chain, seen: set[str], setting: Setting, heavy: Heavy) -> list[str]:
    """What to strengthen: the first drills in full, the others by name."""
    said, matter = after_said(chain), chain.matter
    if not said:
        return []
    lines = ["", *wrapped(said, setting.width)]
    for entry in chain.strengthen:
        lines += entry_told(0, entry, matter.shelf, matter.question.have, seen, setting, heavy)
    others = others_said(chain)
    return [*lines, "", *wrapped(others, setting.width)] if others else lines
