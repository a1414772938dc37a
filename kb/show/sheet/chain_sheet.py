"""The sheet of a chain: the same answer as on a terminal (kb/show/chain_text.py), to be carried about and ticked."""

from collections.abc import Mapping

from kb import dose, kit
from kb.ask.chain import Chain
from kb.ask.matter import Matter
from kb.ask.route import Entry, Route
from kb.ask.sittings import sitting_seconds
from kb.show.at_stick import at_stick_said
from kb.show.bars import bands_of, route_bars
from kb.show.beside import beside_said
from kb.show.care import Due, asks_first, begun, cares
from kb.show.chain_said import after_said, others_said
from kb.show.chart_svg import chart_figure
from kb.show.coach_words import (
    LOADS,
    changed,
    dosed,
    human,
    in_hands,
    listed,
    moved_on,
    plain_markdown,
    share_said,
    throughout_said,
)
from kb.show.entry_lines import gear_said
from kb.show.heavy import Heavy, shares
from kb.show.openers import JOINTS
from kb.show.over_weeks import over_weeks
from kb.show.setting import Setting
from kb.show.sheet.sheet import Sheet, html
from kb.show.sheet.told import Told, fetched, kept_whole, looks, lost_said, minds, round_shown, steps
from kb.show.telling import Telling
from kb.terms import Load, PositionId, Stage

__all__ = ["chain_sheet"]

FINE = Setting(fine=True)
"""Paper and screens show every character."""


def chain_sheet(
    chain: Chain,
    kit_name: str | None,
    paper: str = "a4",
    *,
    figures: Mapping[PositionId, str] | None = None,
    telling: Telling = Telling(),  # noqa: B008
) -> str:
    """The best route of a chain as a whole HTML document; its drills must have their text.

    `kit_name` is None where the question listed what there is; `paper` a key of kb.show.sheet.fit.PAPERS;
    `figures` pictures of positions as `svg` elements, drawn over the chart's points. With a `telling` it says
    what leads, what the numbers say, kilograms, and how the weeks go on.
    """
    matter, route = chain.matter, chain.routes[0]
    lift = matter.shelf.lift
    bars, bands = route_bars(route, lift), bands_of(matter.worked, lift)
    load = "light bar" if matter.load is Load.LIGHT else LOADS[matter.load]
    seen = begun(gear for entry in route.entries for gear in entry.gear)
    drills = _drills(matter, route, seen, None if telling.heavy is shares else telling.weighs(matter.cause))
    first = (telling.caution, plain_markdown(telling.leads))
    lead = tuple(filter(None, (*first, *telling.minds, *map(beside_said, telling.besides), *telling.numbers)))
    weeks = () if telling.weeks is None else tuple(over_weeks(telling.weeks, matter.fault.gone))
    sheet = Sheet(
        title=matter.fault.name,
        facts=(
            lift.name,
            load,
            f"{kit_name} kit" if kit_name else "your gear",
            f"{dose.minutes(route.seconds)} min",
        ),
        chart=chart_figure(lift, bars, bands=bands, figures=figures),
        lower_chart=chart_figure(lift, bars, bands=bands, figures=figures, wide_figures=False) if figures else "",
        drills=drills,
        fetch=fetched([entry.gear for entry in route.entries], matter.shelf.items),
        because=(*lead, *_because(matter, telling.helped), *telling.advice),
        in_short=(*lead, *_because(matter, telling.helped, why=False), *telling.advice),
        notes=tuple(filter(None, (*_notes(route), at_stick_said(matter, route)))),
        after=(*weeks, *_after(chain, seen)),
        ask_first=matter.load is Load.WORKING
        or asks_first(entry.drill for entry in (*route.entries, *chain.strengthen)),
    )
    return html(sheet, paper)


def _because(matter: Matter, helped: str, *, why: bool = True) -> tuple[str, ...]:
    """The cause and what to keep to, `why` it happens and what shows that it's gone: one paragraph, to save lines."""
    cause = matter.cause
    said = [f"Because: {human(cause.id)} ({human(cause.kind)}).{f' {cause.text}' if why else ''}"]
    if matter.worked.id != matter.fault.id:
        said.append(
            f"So the chain works on what comes before it: {matter.worked.name} ({human(matter.worked_cause.id)})."
        )
    said.append(throughout_said(cause, matter.worked_cause, briefly=True, helped=helped))
    said.append(f"Gone when besides: {matter.fault.gone}." if why and matter.fault.gone else "")
    if matter.worked_cause.kind == "mobility":
        said.append(JOINTS)
    return (" ".join(each for each in said if each),)


def _notes(route: Route) -> tuple[str, ...]:
    if len(route.sittings) < 2:
        return ()
    parts = [
        f"drills {first + 1} to {end} ({dose.minutes(sitting_seconds(route.entries, first, end))} min)"
        for first, end in route.sittings
    ]
    return (f"{len(parts)} sittings: {'; then '.join(parts)}.",)


def _after(chain: Chain, seen: set[str]) -> tuple[str, ...]:
    """What to strengthen: the first drills with all that they need, a paragraph each; the others by name."""
    told = [_strengthens(entry, chain.matter, seen) for entry in chain.strengthen]
    return tuple(each for each in (after_said(chain), *told, others_said(chain)) if each)


def _strengthens(entry: Entry, matter: Matter, seen: set[str]) -> str:
    """A strengthening drill in one paragraph."""
    drill, gear = entry.drill, gear_said(entry.gear, matter.question.have, matter.shelf.items)
    much = (dosed(drill, FINE), in_hands(drill, entry.load, entry.gear), share_said(drill, entry.load))
    said = [
        f"{drill.name}: {kept_whole(', '.join(part for part in much if part))}.",
        f"Say “{drill.cues[0]}”" if drill.cues else "",
        f"Move on when {moved_on(drill.standard, entry.gone)}.",
        f"Gear: {gear}." if gear else "",
        f"Mind: {minds(drill)}." if drill.cautions else "",
        f"Not for: {drill.not_for}" if drill.not_for else "",
        *cares(Due(drill, entry.load, entry.dials.catch, entry.gear), seen),
    ]
    return " ".join(part for part in said if part)


def _drills(matter: Matter, route: Route, seen: set[str], heavy: Heavy | None) -> tuple[Told, ...]:
    begins = {first + 1: n for n, (first, _) in enumerate(route.sittings, 1) if n > 1}
    told = []
    for at, entry in enumerate(route.entries):
        before = f"Sitting {begins[at]}: begin with {at} again, as a check." if at in begins else ""
        drill = _told(at + 1, entry, matter, route, seen)
        weighs = heavy(entry) if heavy is not None and drill.load else ""
        told.append(drill._replace(before=before, load=", ".join(filter(None, (drill.load, weighs)))))
    return tuple(told)


def _told(number: int, entry: Entry, matter: Matter, route: Route, seen: set[str]) -> Told:
    drill, have, items = entry.drill, matter.question.have, matter.shelf.items
    lift, standard = matter.shelf.lift, drill.standard
    shown, tries = ("", 0) if entry.work else round_shown(drill)
    look, look_more = looks(drill)
    prepares = drill.stage is Stage.PREPARE
    return Told(
        number=number,
        name=drill.name,
        work=entry.work,
        minutes=dose.minutes(entry.seconds),
        dose=kept_whole(dosed(drill, FINE, work=entry.work)),
        counted=f"{standard.count} of {standard.of}",
        seen=standard.seen,
        boxes=standard.of,
        brief=not entry.work,
        load=in_hands(drill, entry.load, entry.gear, work=entry.work),
        changed="" if prepares else listed([changed(change, lift, drill) for change in entry.changes]),
        cares=tuple(cares(Due(drill, entry.load, entry.dials.catch, entry.gear), seen)),
        steps=steps(drill),
        look=look,
        look_more=look_more,
        cues=drill.cues,
        shown=shown,
        shown_boxes=tries,
        else_do="" if entry.work else kept_whole(dosed(drill, FINE)),
        if_not=_easier(entry, matter),
        if_early=f"go on to {number + 1}" if entry.work and number < len(route.entries) else "",
        gear=gear_said(entry.gear, have, items),
        lost=lost_said(entry.gear, have, seen),
        mind=minds(drill),
        not_for=drill.not_for or "",
    )


def _easier(entry: Entry, matter: Matter) -> str:
    """The first easier version that the gear allows, and what it eases."""
    for regression in entry.drill.regressions:
        easier = matter.shelf.drills.get(regression.drill)
        if easier is not None and kit.fit(easier, matter.question.have, matter.shelf.items) is not None:
            return f"{easier.name}: {regression.eases}"
    return ""
