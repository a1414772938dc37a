"""Instead of a drill, and the kits, on a terminal."""

from collections.abc import Collection, Mapping, Sequence
from typing import NamedTuple

from kb.ask.harder import Harder
from kb.ask.near import Near
from kb.ask.swap import Swap
from kb.kit import fit, lacking, missing
from kb.show.care import AFRAID
from kb.show.coach_words import changed, dosed, human, listed, moved_on, plain_markdown
from kb.show.setting import Setting, hanging, rows, titled, wrapped
from kb.terms import Drill, DrillId, FaultId, Item, ItemId, Load

__all__ = ["kits_text", "swap_text"]

MOST_NAMED = 3
"""Faults that are named before they are counted."""


QUIET = (
    "Quiet: the feet stay down or are placed, and nothing is let fall. Only a weight that you lower by hand every "
    "time, and no try that could be missed."
)
"""What is asked of a lifter above neighbours. Common practice, no source."""

HEADROOM = ItemId("headroom")

CEILING = (
    "Under a low ceiling: outside, if the ground is level and dry; or kneeling on one knee or sitting, with a stick and"
    " then a light bar that clears the ceiling by a hand's length with straight arms. Try it with the stick first."
)
"""What to do where nothing may go overhead standing. Common practice, no source."""

HELD = (ItemId("bar"), ItemId("stick"))
"""What is in the hands in nearly every drill: another thing there is said."""


class _Told(NamedTuple):
    """What is there, items by id, what was said to stand in for what, and the drills whose cue and standard were."""

    have: frozenset[ItemId]
    items: Mapping[ItemId, Item]
    instead: set[tuple[ItemId, ItemId]]
    drills: set[DrillId]


def swap_text(
    swap: Swap,
    *,
    drills: Mapping[DrillId, Drill],
    items: Mapping[ItemId, Item],
    setting: Setting,
    only: str = "",
    instead: bool = False,
) -> list[str]:
    """Whether a drill can be done, what is lost, easier and harder ones, the nearest others, what an item opens.

    `only` leaves all but the easier or the harder ones out. `instead`: whether it could be done isn't said, and the
    nearest others come first, as they do for a drill that is ruled out.
    """
    told = _Told(swap.have, items, {(gear.item, gear.using) for gear in swap.gear}, set())
    lines = [] if instead and swap.doable else _as_it_is(swap, items, setting)
    lines += wrapped(QUIET, setting.width) if swap.ruled.quiet else []
    if swap.gently:
        lines += wrapped(AFRAID, setting.width)
        steps = [line for drill in swap.gently for line in _drill(drill, "", told, setting)]
        lines += titled("In this order, each until it is met", steps, setting)
    if only:
        found = _easier(swap, drills, told, setting) if only == "easier" else _harder(swap, told, setting)
        return _begun(lines + (found or wrapped(_none(swap, only), setting.width)))
    if instead or swap.barred:
        lines += _nearest(swap, told, setting) or wrapped(_none(swap, "like it"), setting.width)
        named = {*(near.drill.id for near in swap.swaps), *(drill.id for drill in swap.gently)}
        swap = swap._replace(easier=tuple(each for each in swap.easier if each.drill.id not in named))
        lines += [] if swap.gently else _harder(swap, told, setting, same=not instead)
        lines += _easier(swap, drills, told, setting)
    else:
        lines += [*_easier(swap, drills, told, setting), *_harder(swap, told, setting)]
        lines += _nearest(swap, told, setting)
    strong = [line for drill in swap.strength for line in _drill(drill, "", told, setting)]
    lines += titled("Meanwhile, to stay strong for it", strong, setting)
    if swap.barred or (instead and swap.doable):
        return _begun(lines)
    opens = rows([(items[each.item].name, _opened(each.drills, drills)) for each in swap.one_more], setting)
    return [*lines, *titled("One more item would open", opens, setting)]


def _begun(lines: list[str]) -> list[str]:
    """The lines without an empty one at the head."""
    return lines[1:] if lines and not lines[0] else lines


def _none(swap: Swap, what: str) -> str:
    """That nothing is easier, harder or like it.

    >>> _none(Swap(*[None] * 9), "harder")  # type: ignore[arg-type]
    'Nothing harder with what is there.'
    """
    here = " is quiet" if swap.ruled.quiet else " is left by what is ruled out" if swap.ruled.without else ""
    return f"Nothing {what}{here} with what is there."


def _nearest(swap: Swap, told: _Told, setting: Setting) -> list[str]:
    """What would do instead, each with what it keeps and loses."""
    others: list[str] = []
    for near in swap.swaps:
        others += _drill(near.drill, "", told, setting)
        for label, said in (("keeps", _keeps(near)), ("loses", _loses(near))):
            if said:
                others += hanging(f"      {label}  ", said, setting)
    return titled("Instead, nearest first", others, setting)


def _easier(swap: Swap, drills: Mapping[DrillId, Drill], told: _Told, setting: Setting) -> list[str]:
    easier: list[str] = []
    for each in swap.easier:
        than = "" if each.than == swap.drill.id else f"; easier than {drills[each.than].name.lower()}"
        easier += _drill(each.drill, f"{each.eases}{than}", told, setting)
    return titled("Easier, as its entry names them", easier, setting)


def _harder(swap: Swap, told: _Told, setting: Setting, *, same: bool = True) -> list[str]:
    """The drill itself without more weight (unless it is not wanted), or what is left of it, then what comes after."""
    lines: list[str] = []
    up = swap.turned_up
    if up is not None and up.turn_up and (same or up.id != swap.drill.id):
        whose, name = ("The same", "") if up.id == swap.drill.id else ("The nearest", f"{up.name}: ")
        said = hanging("  - ", f"{name}{up.turn_up}", setting)
        lines += titled(f"{whose}, harder without more weight", said, setting)
    harder: list[str] = []
    for more in swap.harder:
        harder += _drill(more.drill, _harder_for(more), told, setting)
    return [*lines, *titled("Harder, once its standard is met", harder, setting)]


def _instead(drill: Drill, told: _Told) -> str:
    """What is held instead of a bar or a stick, after a comma; nothing where that is there, or it was said."""
    fitted = fit(drill, told.have, told.items)
    used = [
        f"{told.items[gear.using].name.lower()} for {told.items[gear.item].name.lower()}"
        for gear in (fitted.gear if fitted else ())
        if gear.item in HELD and gear.using != gear.item and (gear.item, gear.using) not in told.instead
    ]
    return f", with {listed(used)}" if used else ""


def _drill(drill: Drill, why: str, told: _Told, setting: Setting) -> list[str]:
    """A drill, how much of it and why; what to say and until when, unless it was told."""
    lines = hanging(
        "  - ", f"{drill.name}, {dosed(drill, setting)}{_instead(drill, told)}{f': {why}' if why else ''}", setting
    )
    if drill.id not in told.drills:
        told.drills.add(drill.id)
        cue = f'"{drill.cues[0]}" ' if drill.cues else ""
        lines += hanging("      ", f"{cue}Until {moved_on(drill.standard)} (`show {drill.id}`)", setting)
    return lines


def _keeps(near: Near) -> str:
    """What another drill keeps, the faults together.

    >>> _keeps(Near(None, ("a-b", "c"), (), ("aims at d",), (), 0))  # type: ignore[arg-type]
    'works on a b and c; aims at d'
    """
    faults = [f"works on {_few(near.works_on)}"] if near.works_on else []
    return "; ".join([*faults, *map(human, near.keeps)])


def _loses(near: Near) -> str:
    """What another drill loses, the faults together."""
    verb = "is" if len(near.leaves) == 1 else "are"
    faults = [f"{_few(near.leaves)} {verb} not worked on"] if near.leaves else []
    return "; ".join([*faults, *map(human, near.loses)])


def _few(faults: Sequence[FaultId]) -> str:
    """Some faults by name, and how many more there are."""
    names = [human(each) for each in faults]
    return listed(names if len(names) <= MOST_NAMED else [*names[:MOST_NAMED], f"{len(names) - MOST_NAMED} more"])


def _harder_for(more: Harder) -> str:
    """Why a drill is harder than the one asked about."""
    if more.eased:
        return f"this one eases it: {more.eased}"
    if more.lift is None:
        return "builds on this one"
    lift = more.lift
    more_of_it = any(change.dial == "reach" for change in more.turned)
    how = listed([changed(change, lift, more.drill) for change in more.turned])
    return f"more of the lift, {how}" if more_of_it else f"the same stretch {how}"


def _as_it_is(swap: Swap, items: Mapping[ItemId, Item], setting: Setting) -> list[str]:
    name = swap.drill.name
    if swap.barred:
        return wrapped(f"{name} is ruled out: {listed(swap.barred)}.", setting.width)
    if not swap.doable:
        lacks = missing(swap.drill, swap.have, items)
        said = listed(lacking(swap.drill, swap.have, items))
        one = [items[item].name.lower() for item in swap.with_one if item not in lacks]
        said += f" (or {listed(one, 'or')})" if said and one else ""
        why = f": it lacks {said}" if said else ""
        lines = wrapped(f"{name} can't be done with what is there{why}.", setting.width)
        return lines + (wrapped(CEILING, setting.width) if HEADROOM in lacks else [])
    stand_ins = [
        f"{items[gear.using].name.lower()} for {items[gear.item].name.lower()}"
        for gear in swap.gear
        if gear.using != gear.item
    ]
    if not stand_ins:
        return wrapped(f"{name} can be done as it is.", setting.width) + _miss(swap, setting)
    lines = wrapped(f"{name} can be done with {listed(stand_ins)}.", setting.width)
    lines += [line for lost in swap.lost for line in hanging("  lost  ", lost, setting)]
    return lines + _miss(swap, setting)


def _miss(swap: Swap, setting: Setting) -> list[str]:
    """The drill's way out, where it is done with more than a stick."""
    if swap.load is None or swap.load < Load.LIGHT or "Miss" not in swap.drill.sections:
        return []
    return hanging("  miss  ", " ".join(plain_markdown(swap.drill.sections["Miss"]).split()), setting)


def _opened(ids: Collection[DrillId], drills: Mapping[DrillId, Drill]) -> str:
    names = [drills[drill].name for drill in ids]
    shown = names if len(names) <= 4 else [*names[:3], f"{len(names) - 3} more"]
    return listed(shown)


def kits_text(
    kits: Mapping[str, tuple[Collection[ItemId], int, int]], items: Mapping[ItemId, Item], setting: Setting
) -> list[str]:
    """Each kit, what it can do, and what is in it."""
    table = [
        (kit, f"{drills} drills, {faults} faults", ", ".join(sorted(items[item].name.lower() for item in held)))
        for kit, (held, drills, faults) in kits.items()
    ]
    return rows(table, setting, indent=0)
