"""Instead of a drill, and the kits, on a terminal."""

from collections.abc import Collection, Mapping

from kb.ask.harder import Harder
from kb.ask.swap import Swap
from kb.show.coach_words import changed, dosed, human, listed
from kb.show.setting import Setting, hanging, rows, titled, wrapped
from kb.terms import Drill, DrillId, Item, ItemId

__all__ = ["kits_text", "swap_text"]


def swap_text(
    swap: Swap, *, drills: Mapping[DrillId, Drill], items: Mapping[ItemId, Item], setting: Setting
) -> list[str]:
    """Whether a drill can be done, what is lost, easier and harder ones, the nearest others, what an item opens."""
    lines = _as_it_is(swap, items, setting)
    easier: list[str] = []
    for each in swap.easier:
        than = "" if each.than == swap.drill.id else f"; easier than {drills[each.than].name.lower()}"
        eases = f"{_dosed(each.drill, setting)}: {each.eases}{than}"
        easier += hanging("  - ", f"{eases} (`show {each.drill.id}`)", setting)
    lines += titled("Easier, as its entry names them", easier, setting)
    harder: list[str] = []
    for more in swap.harder:
        why = f"{_dosed(more.drill, setting)}: {_harder_for(more)}"
        harder += hanging("  - ", f"{why} (`show {more.drill.id}`)", setting)
    if swap.drill.turn_up and swap.doable:
        lines += titled("The same, harder without more weight", hanging("  - ", swap.drill.turn_up, setting), setting)
    lines += titled("Harder, once its standard is met", harder, setting)
    others: list[str] = []
    for near in swap.swaps:
        others += hanging("  - ", f"{_dosed(near.drill, setting)} (`show {near.drill.id}`)", setting)
        for label, said in (("keeps", near.keeps), ("loses", near.loses)):
            if said:
                others += hanging(f"      {label}  ", "; ".join(human(each) for each in said), setting)
    lines += titled("Instead, nearest first", others, setting)
    opens = rows([(items[each.item].name, _opened(each.drills, drills)) for each in swap.one_more], setting)
    return [*lines, *titled("One more item would open", opens, setting)]


def _dosed(drill: Drill, setting: Setting) -> str:
    """A drill and how much of it."""
    return f"{drill.name}, {dosed(drill, setting)}"


def _harder_for(more: Harder) -> str:
    """Why a drill is harder than the one asked about."""
    if more.eased:
        return f"this one eases it: {more.eased}"
    if more.lift is None:
        return "builds on this one"
    lift = more.lift
    return f"the same stretch {listed([changed(change, lift, more.drill) for change in more.turned])}"


def _as_it_is(swap: Swap, items: Mapping[ItemId, Item], setting: Setting) -> list[str]:
    name = swap.drill.name
    if not swap.doable:
        one = listed([items[item].name.lower() for item in swap.with_one], "or")
        could = f"; with one thing more it could be: {one}" if one else ""
        return wrapped(f"{name} can't be done with what is there{could}.", setting.width)
    stand_ins = [
        f"{items[gear.using].name.lower()} for {items[gear.item].name.lower()}"
        for gear in swap.gear
        if gear.using != gear.item
    ]
    if not stand_ins:
        return wrapped(f"{name} can be done as it is.", setting.width)
    lines = wrapped(f"{name} can be done with {listed(stand_ins)}.", setting.width)
    return lines + [line for lost in swap.lost for line in hanging("  lost  ", lost, setting)]


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
