"""Instead of a drill: as it is with a stand-in, easier, harder, or the nearest others that what is there allows."""

from collections.abc import Mapping
from itertools import zip_longest
from typing import NamedTuple

from kb import kit
from kb.ask.barred import NOTHING_RULED, Ruled, fit_ruled, why_barred
from kb.ask.fear import MOST_STEPS, way_out_of
from kb.ask.harder import Harder, harder
from kb.ask.near import Near, alike, near, order
from kb.terms import Catch, Drill, DrillId, Item, ItemId, Lift, LiftId, Load, Speed, Stage

__all__ = ["Easier", "Opens", "Swap", "swap"]

MOST = 5
"""Swaps, easier and harder versions and further items named at most."""


MOST_STRENGTH = 4
"""Drills that strengthen named at most. Ours."""


class Easier(NamedTuple):
    """An easier version that can be done, what it eases, and the drill it is easier than."""

    drill: Drill
    eases: str
    than: DrillId


class Opens(NamedTuple):
    """One more item, and the drills it would let be done."""

    item: ItemId
    drills: tuple[DrillId, ...]


class Swap(NamedTuple):
    """Whether a drill can be done with what is there, what is lost; what is easier, harder or serves as well.

    `with_one` are the single items with any of which a drill that can't be done could be; `have` is what is there.
    `strength` is what keeps its lift strong meanwhile, where neither it nor, when it is barred, what stands in for it
    can be done at its own weight. `gently` is for who is afraid. `barred` says why what is `ruled` out rules the drill
    itself out; `turned_up` is the drill whose `turn_up` still serves then.
    """

    drill: Drill
    doable: bool
    gear: tuple[kit.Gear, ...]
    load: Load | None
    lost: tuple[str, ...]
    easier: tuple[Easier, ...]
    harder: tuple[Harder, ...]
    swaps: tuple[Near, ...]
    one_more: tuple[Opens, ...]
    with_one: tuple[ItemId, ...] = ()
    have: frozenset[ItemId] = frozenset()
    strength: tuple[Drill, ...] = ()
    ruled: Ruled = NOTHING_RULED
    barred: tuple[str, ...] = ()
    gently: tuple[Drill, ...] = ()
    turned_up: Drill | None = None


class _Room(NamedTuple):
    """What is asked of: everything there is to do, what of it isn't barred, and how that can be done here."""

    have: frozenset[ItemId]
    items: Mapping[ItemId, Item]
    drills: Mapping[DrillId, Drill]
    allowed: Mapping[DrillId, Drill]
    fits: Mapping[DrillId, kit.Fit]
    ruled: Ruled

    def with_item(self, drill: Drill, item: ItemId) -> bool:
        """Whether one thing more would let a drill be done."""
        return fit_ruled(drill, self.have | {item}, self.items, self.ruled) is not None


def swap(
    drill: Drill,
    have: frozenset[ItemId],
    *,
    drills: Mapping[DrillId, Drill],
    items: Mapping[ItemId, Item],
    lifts: Mapping[LiftId, Lift],
    ruled: Ruled = NOTHING_RULED,
    instead: bool = False,
    steps: tuple[Drill, ...] | None = None,
) -> Swap:
    """What `drill` comes to with exactly the items in `have`, and nothing that is `ruled` out.

    The nearest others are ranked by what they lose: a step there and back on the dials, faults no longer addressed,
    positions no longer aimed at, and most of all the weight. The easier versions are those that entries name: the
    drill's own first, then theirs. Where something else is wanted `instead`, what is only an easier version of it is no
    substitute. `steps` are what the library has against fear, for who is afraid: then nothing at full speed stands in.
    """
    room = _room(have, drills, items, lifts, ruled)
    barred = why_barred(drill, ruled, lifts)
    fitted = None if barred else fit_ruled(drill, have, items, ruled)
    load = min(drill.load[1], fitted.load) if fitted else None
    left = {drill.id, *(_versions(drill, drills) if instead else ())}
    left |= {each.id for each in drills.values() if each.speed is Speed.FULL} if steps is not None else set()
    others = (room.drills[other] for other in room.fits if other not in left)
    found = [near(drill, other, room.fits[other.id], lifts) for other in others if alike(drill, other, lifts)]
    found = [each._replace(loses=_missed(each, ruled)) for each in found]
    gently = () if steps is None else _gently(drill, steps, room, lifts)
    found.sort(key=lambda each: order(drill, each))
    ranked = tuple(each for each in found if each.drill not in gently)[:MOST]
    return Swap(
        drill=drill,
        doable=fitted is not None,
        gear=fitted.gear if fitted else (),
        load=load,
        lost=_lost(drill, fitted),
        easier=_easier(drill, room),
        harder=harder(drill, [room.drills[other] for other in room.fits], lifts)[:MOST],
        swaps=ranked,
        one_more=_one_more(room),
        with_one=() if fitted or barred else tuple(i for i in sorted(set(items) - have) if room.with_item(drill, i)),
        have=have,
        strength=() if load == drill.load[1] or (barred and _as_heavy(drill, ranked, room)) else _strength(drill, room),
        ruled=ruled,
        barred=barred,
        gently=gently,
        turned_up=drill if fitted else next((each.drill for each in ranked if barred and each.drill.turn_up), None),
    )


def _gently(drill: Drill, steps: tuple[Drill, ...], room: _Room, lifts: Mapping[LiftId, Lift]) -> tuple[Drill, ...]:
    """The way out of what is done in the drill's lifts, then the small steps that come near it."""
    out = [each for each in way_out_of(drill, room.drills.values()) if each.id in room.fits]
    able = [each for each in steps if each.id in room.fits and each.id != drill.id and alike(drill, each, lifts)]
    return (*out, *able[:MOST_STEPS])


def _room(
    have: frozenset[ItemId],
    drills: Mapping[DrillId, Drill],
    items: Mapping[ItemId, Item],
    lifts: Mapping[LiftId, Lift],
    ruled: Ruled,
) -> _Room:
    allowed = {each.id: each for each in drills.values() if not why_barred(each, ruled, lifts)}
    fits = ((each.id, fit_ruled(each, have, items, ruled)) for each in allowed.values())
    return _Room(have, items, drills, allowed, {each: fit for each, fit in fits if fit is not None}, ruled)


def _lost(drill: Drill, fitted: kit.Fit | None) -> tuple[str, ...]:
    """What the stand-ins cost, and the weight that can't be had with them."""
    if fitted is None:
        return ()
    lost = [each.lost for each in fitted.gear if each.lost]
    if fitted.load < drill.load[1]:
        lost.append(f"no more than {fitted.load.word} load")
    return tuple(dict.fromkeys(lost))


def _as_heavy(drill: Drill, ranked: tuple[Near, ...], room: _Room) -> bool:
    """Whether a substitute can be done at the drill's own weight: then nothing more need keep the lift strong."""
    return any(min(each.drill.load[1], room.fits[each.drill.id].load) >= drill.load[1] for each in ranked)


def _strength(drill: Drill, room: _Room) -> tuple[Drill, ...]:
    """What strengthens for the drill's lifts at some weight here: legs, a press or a hinge, a hold, and round again."""
    groups: tuple[list[Drill], ...] = ([], [], [])
    for other_id, fitted in sorted(room.fits.items(), key=lambda each: each[0]):
        other = room.drills[other_id]
        if other.stage is not Stage.FINISH or other.id == drill.id or not set(drill.lifts) & set(other.lifts):
            continue
        if min(other.load[1], fitted.load) >= Load.LIGHT:
            held = not other.dose.reps
            groups[2 if held else 0 if other.catch >= Catch.POWER else 1].append(other)
    turns = [other for turn in zip_longest(*groups) for other in turn if other is not None]
    return tuple(turns[:MOST_STRENGTH])


def _versions(drill: Drill, drills: Mapping[DrillId, Drill]) -> dict[DrillId, tuple[str, DrillId]]:
    """The easier versions that entries name: a drill's own first, then theirs; what each eases, of which drill."""
    found: dict[DrillId, tuple[str, DrillId]] = {}
    waiting = [drill]
    for than in waiting:  # grows as it is gone through: the nearest come first
        for said in than.regressions:
            if said.drill in drills and said.drill not in found and said.drill != drill.id:
                found[said.drill] = (said.eases, than.id)
                waiting.append(drills[said.drill])
    return found


def _easier(drill: Drill, room: _Room) -> tuple[Easier, ...]:
    """The easier versions of a drill that can be done."""
    found = _versions(drill, room.drills).items()
    can = [Easier(room.drills[easier], *said) for easier, said in found if easier in room.fits]
    return tuple(can[:MOST])


def _missed(each: Near, ruled: Ruled) -> tuple[str, ...]:
    """What a substitute loses, less the bar behind the neck where that is ruled out: nobody wants it aimed at."""
    if "behind-neck" not in ruled.without:
        return each.loses
    unwanted = {f"{place} is not aimed at" for place, said in ruled.positions.items() if said.bar == "neck"}
    return tuple(lost for lost in each.loses if lost not in unwanted)


def _one_more(room: _Room) -> tuple[Opens, ...]:
    """The single items that would let most further drills be done, most first."""
    shut = [each for each in room.allowed.values() if each.id not in room.fits]
    opens = []
    for item in sorted(set(room.items) - room.have):
        opened = tuple(each.id for each in shut if room.with_item(each, item))
        if opened:
            opens.append(Opens(item, opened))
    return tuple(sorted(opens, key=lambda each: (-len(each.drills), each.item))[:MOST])
