"""DESIGN.md section 5 as a judge: which rules a chain or a path breaks, in the design's words, and what it costs."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from reading import (
    FREE,
    Chain,
    Entry,
    Reading,
    World,
    caps,
    check_s,
    of_lift,
    read,
    stand,
    step,
    work_s,
)

from kb.ask.question import MOST_WORK, ChainQuestion
from kb.terms import DrillId, ItemId, Load, Stage

__all__ = [
    "RULES",
    "Chain",
    "Entry",
    "World",
    "broken_path_rules",
    "broken_rules",
    "broken_sittings",
    "cost",
    "cut",
    "entry_seconds",
    "path_cost",
    "path_load",
    "seconds",
]

RULES: dict[str, str] = {
    "kit": "kit too small (L itself doesn't test f, or nothing doable leads there, or no prepare drill for mobility)",
    "of L": "only drills of L, or of a part of L, count",
    "finish": "finish (strengthen) stands outside the order: never in a chain",
    "doable": "a drill is doable if E leaves some load of its range at or under min(l, light) and, of each"
    " prerequisite group in doubt, one member is doable",
    "K": "at most K entries, preparation counted",
    "work": "of them at most 4 of work besides L",
    "1": "1. it ends in L's drill at l, and the entry before that tests f, unless no doable drill but L does",
    "2": "2. each can be done with E at its load, stand-ins capping dials; below its least load it can't",
    "3": "3. each prerequisite in doubt, and each part of a complex in doubt, comes earlier; a drill comes again only"
    " at a higher load",
    "4": "4. preparation only opens; the first after it addresses or tests f; something addresses c; a mobility cause"
    " opens with a prepare drill for it",
    "5": "5. nothing but L is above light, and L above light comes right after L at light",
    "6": "6. drills that are held serve as bridges, except bridge: no",
    "7": "7. a drill that addresses c, and L, take their full dose (work); any other is a check; all fit T",
    "path": "path: from what A holds to L, every prerequisite held or earlier, one member of each group",
    "up": "order up: among segment and join drills neither end of reach goes down",
    "down": "order down: among segment and join drills the start never goes up",
    "sittings": "cut into sittings that overlap by one entry (the shared one is a check in the later), as late as K"
    " and T allow, after an entry that tests f if there is one",
}


# --- the rules of a chain ---


def _broken(rule: str, detail: object = "") -> str:
    return f"{RULES[rule]} ({detail})" if detail != "" else RULES[rule]


def broken_rules(world: World, question: ChainQuestion, chain: Chain, *, limits: bool = True) -> list[str]:
    """Every rule of DESIGN.md section 5 "Chain" that a chain breaks, in the design's words.

    `limits` False leaves out K, the 4 entries of work and T, as for a chain that is cut into sittings (a convention:
    the limit of work belongs to K).
    """
    reading = read(world, question)
    if strangers := [i for i, _ in chain if i not in world.drills or not of_lift(world.drills[i], world.lift)]:
        return [_broken("of L", strangers)]
    found = list(_limits(reading, chain)) if limits else []
    for rule in (_kit, _rule_1, _rule_2, _rule_3, _rule_4, _rule_5, _rule_6):
        found.extend(rule(reading, chain))
    return found


def _limits(r: Reading, chain: Chain) -> Iterator[str]:
    if len(chain) > r.question.at_most:
        yield _broken("K", len(chain))
    work = [e for e in chain if r.works_on(e) and e[0] != r.world.lift.drill]
    if len(work) > MOST_WORK:
        yield _broken("work", work)
    if r.question.seconds is not None and (total := seconds(r.world, r.question, chain)) > r.question.seconds:
        yield _broken("7", total)


def _kit(r: Reading, chain: Chain) -> Iterator[str]:
    if r.load is None or not r.shows((r.world.lift.drill, r.load), r.fault, r.cause):
        yield _broken("kit", "L itself doesn't test f")
    if finishing := [i for i, _ in chain if r.world.drills[i].stage is Stage.FINISH]:
        yield _broken("finish", finishing)
    if undoable := [i for i, _ in chain if i not in r.doable]:
        yield _broken("doable", undoable)
    goal = (r.world.lift.drill, r.load)
    if heavy := [e for e in chain if e != goal and r.load is not None and e[1] > min(r.load, Load.LIGHT)]:
        yield _broken("doable", heavy)


def _rule_1(r: Reading, chain: Chain) -> Iterator[str]:
    if not chain or chain[-1] != (r.world.lift.drill, r.load):
        yield _broken("1", "ends elsewhere")
    elif r.testers and not (len(chain) > 1 and r.shows(chain[-2], r.fault, r.cause)):
        yield _broken("1", f"the entry before doesn't test f; {sorted(r.testers)} would")


def _rule_2(r: Reading, chain: Chain) -> Iterator[str]:
    for i, load in chain:
        drill, under = r.world.drills[i], r.caps[i]
        if under is None or not drill.load[0] <= load <= min(drill.load[1], under[1]):
            yield _broken("2", (i, load))


def _rule_3(r: Reading, chain: Chain) -> Iterator[str]:
    for n, (i, load) in enumerate(chain):
        earlier = {j for j, _ in chain[:n]}
        for group in r.owed(r.world.drills[i]):
            if not earlier & set(group):
                yield _broken("3", f"{i} before any of {group}")
        if any(j == i and before >= load for j, before in chain[:n]):
            yield _broken("3", f"{i} comes again no heavier")


def _rule_4(r: Reading, chain: Chain) -> Iterator[str]:
    # Convention: preparation entries come first, all of them; for a cause that is not mobility preparation may appear
    # only where it addresses (otherwise it only costs).
    rest = [e for e in chain if not r.prepares(e)]
    opening = [e for e in chain if r.prepares(e)]
    if list(chain) != opening + rest:
        yield _broken("4", "preparation after the opening")
    if rest and not (r.works_on(rest[0]) or r.shows(rest[0])):
        yield _broken("4", f"{rest[0]} neither addresses nor tests")
    # Convention: a finish drill of L will do if the kit can do it at a load at which it addresses c.
    finishing = [d for d in r.world.drills.values() if d.stage is Stage.FINISH and of_lift(d, r.world.lift)]
    afterwards = r.worked_cause.kind == "strength" and any(
        under and d.load[0] <= under[1] and r.works_on((d.id, min(d.load[1], under[1])))
        for d in finishing
        for under in [r.caps[d.id]]
    )
    if not afterwards and not any(r.works_on(e) for e in chain):
        yield _broken("4", "nothing addresses c")
    if r.worked_cause.kind == "mobility":
        if not (chain and r.prepares(chain[0]) and r.works_on(chain[0])):
            yield _broken("4", "a mobility cause opens otherwise")
    elif idle := [e for e in opening if not r.works_on(e)]:
        yield _broken("4", f"{idle} prepare for something else")


def _rule_5(r: Reading, chain: Chain) -> Iterator[str]:
    for n, (i, load) in enumerate(chain):
        if load <= Load.LIGHT:
            continue
        if i != r.world.lift.drill:
            yield _broken("5", i)
        elif n == 0 or chain[n - 1] != (i, Load.LIGHT):
            yield _broken("5", "L above light comes after something else")


def _rule_6(r: Reading, chain: Chain) -> Iterator[str]:
    for entry in chain:
        if not r.world.drills[entry[0]].bridge and is_bridge(r, entry):
            yield _broken("6", entry)


def is_bridge(r: Reading, entry: Entry) -> bool:
    """Past preparation, and neither addresses nor tests f: it costs 600 (L too, and a drill in doubt, read plainly)."""
    return not r.prepares(entry) and not r.works_on(entry) and not r.shows(entry)


# --- what a chain costs ---


def entry_seconds(world: World, question: ChainQuestion, entry: Entry, *, shared: bool = False) -> int:
    """Work takes the full dose, a check (and the shared entry of a later sitting) set-up and one round."""
    work = read(world, question).is_work(entry) and not shared
    return (work_s if work else check_s)(world.drills[entry[0]])


def seconds(world: World, question: ChainQuestion, chain: Chain) -> int:
    """How long a whole chain takes in one sitting."""
    return sum(entry_seconds(world, question, entry) for entry in chain)


def _steps(world: World, have: Iterable[ItemId], chain: Chain) -> int:
    there = frozenset(have)
    stands = []
    for i, load in chain:
        under = caps(world, world.drills[i], there)
        assert under is not None, i
        stands.append(stand(world, world.drills[i], load, under))
    return sum(step(world.lift, a, b) for a, b in pairwise(stands))


def cost(world: World, question: ChainQuestion, chain: Chain) -> int:
    """300 x step + seconds + 600 for each drill past preparation that neither addresses nor tests f."""
    r = read(world, question)
    bridges = sum(is_bridge(r, entry) for entry in chain)
    return 300 * _steps(world, question.have, chain) + seconds(world, question, chain) + 600 * bridges


# --- sittings ---


def _fits(r: Reading, chain: Chain, start: int, end: int) -> bool:
    entries = chain[start:end]
    shared = [start > 0] + [False] * (len(entries) - 1)
    if len(entries) > r.question.at_most:
        return False
    work = [e for e, again in zip(entries, shared, strict=True) if not again and r.works_on(e)]
    if sum(e[0] != r.world.lift.drill for e in work) > MOST_WORK:
        return False
    took = sum(entry_seconds(r.world, r.question, e, shared=again) for e, again in zip(entries, shared, strict=True))
    return r.question.seconds is None or took <= r.question.seconds


def _ends(r: Reading, chain: Chain, start: int) -> int | None:
    """Where the sitting that begins at `start` ends; None if not even one new entry fits."""
    if _fits(r, chain, start, len(chain)):
        return len(chain)
    fitting = [end for end in range(start + 2, len(chain)) if _fits(r, chain, start, end)]
    return max([end for end in fitting if r.shows(chain[end - 1], r.fault, r.cause)] or fitting, default=None)


def cut(world: World, question: ChainQuestion, chain: Chain) -> list[tuple[int, int]] | None:
    """The sittings of a chain, half-open; None if two neighbours don't fit one sitting.

    Convention: "after an entry that tests f" means f itself, not g, where f comes of an earlier fault. A sitting is
    within K, the 4 entries of work and T, its shared entry a check; one that does not end the chain ends with the
    latest entry that tests f, or with the latest of all if none does.
    """
    r, start, found = read(world, question), 0, []
    while True:
        end = _ends(r, chain, start)
        if end is None:
            return None
        found.append((start, end))
        if end == len(chain):
            return found
        start = end - 1


def broken_sittings(
    world: World, question: ChainQuestion, chain: Chain, sittings: Sequence[Sequence[int]]
) -> list[str]:
    """What is wrong with the sittings of a chain; a chain within K and T is one sitting."""
    r, found = read(world, question), []
    spans = [(span[0], span[1]) for span in sittings]
    if not spans or spans[0][0] != 0 or spans[-1][1] != len(chain):
        return [_broken("sittings", "not from the first entry to the last")]
    for (_, end), (start, later) in pairwise(spans):
        if start != end - 1 or later <= end:
            found.append(_broken("sittings", f"{start} doesn't overlap {end} by one"))
    for start, end in spans:
        if not _fits(r, chain, start, end):
            found.append(_broken("sittings", f"{start, end} doesn't fit"))
        elif end != (latest := _ends(r, chain, start)):
            found.append(_broken("sittings", f"{start, end} could end at {latest}"))
    return found


# --- paths ---


def path_load(world: World, have: Iterable[ItemId]) -> Load | None:
    """Working load where the kit does L uncapped, else its most."""
    drill = world.drills[world.lift.drill]
    under = caps(world, drill, have)
    return None if under is None or under[1] < drill.load[0] else min(drill.load[1], under[1])


def closure(world: World, holds: Iterable[DrillId]) -> frozenset[DrillId]:
    """What L is built on and a lifter does not hold, by every member of every group that nothing held satisfies."""
    held, found, todo = set(holds), set[DrillId](), [world.lift.drill]
    while todo:
        drill = world.drills[todo.pop()]
        for group in (*drill.prerequisites, *((part,) for part in drill.made_of)):
            if not held & set(group):
                new = {m for m in group if m in world.drills} - found
                found |= new
                todo.extend(new)
    return frozenset(found)


def broken_path_rules(
    world: World, holds: Iterable[DrillId], have: Iterable[ItemId], path: Chain, order: str = "either"
) -> list[str]:
    """Every rule of DESIGN.md section 5 "Path" that a list breaks: rules 2, 3 and 5 of chains, the groups, the order.

    Conventions: finish drills are not in a path; preparation opens, as in a chain (no step leads into it); `bridge: no`
    may stand in a path only if it is not held and L is built on it (otherwise it would be a mere stepping stone).
    """
    held, there = frozenset(holds), frozenset(have)
    if strangers := [i for i, _ in path if i not in world.drills or not of_lift(world.drills[i], world.lift)]:
        return [_broken("of L", strangers)]
    found, needed, lift = [], closure(world, held), world.lift
    if not path or path[-1] != (lift.drill, path_load(world, there)):
        found.append(_broken("path", "doesn't end in L"))
    stages = [world.drills[i].stage is not Stage.PREPARE for i, _ in path]
    if stages != sorted(stages):
        found.append(_broken("4", "preparation after the opening"))
    for n, (i, load) in enumerate(path):
        drill, under = world.drills[i], caps(world, world.drills[i], there)
        if drill.stage is Stage.FINISH:
            found.append(_broken("finish", i))
        if under is None or not drill.load[0] <= load <= min(drill.load[1], under[1]):
            found.append(_broken("2", (i, load)))
        earlier = held | {j for j, _ in path[:n]}
        for group in (*drill.prerequisites, *((part,) for part in drill.made_of)):
            if not earlier & set(group):
                found.append(_broken("path", f"{i} before any of {group}"))
        if any(j == i and before >= load for j, before in path[:n]):
            found.append(_broken("3", f"{i} comes again no heavier"))
        if load > Load.LIGHT and (i != lift.drill or n == 0 or path[n - 1] != (i, Load.LIGHT)):
            found.append(_broken("5", (i, load)))
        if not drill.bridge and i != lift.drill and (i in held or i not in needed):
            found.append(_broken("6", i))
    return found + _out_of_order(world, path, order)


def _out_of_order(world: World, path: Chain, order: str) -> list[str]:
    # Convention: what begins where the bar is caught (receive, split) is the squat or split that every catch stands on;
    # every lift needs it before its hang lifts, so bound by the order no path floor first would exist.
    caught = {point for point in ("receive", "split") if point in {t.at for t in world.lift.timeline}}
    pieces = [
        world.drills[i]
        for i, _ in path
        if world.drills[i].stage in {Stage.SEGMENT, Stage.JOIN}
        and not {first for lift, (first, _) in world.drills[i].reach.items() if lift in world.lift.serves} & caught
    ]
    stands = [stand(world, drill, Load.NONE, FREE) for drill in pieces]
    found = []
    for a, b in pairwise(stands):
        if order == "up" and (b.first < a.first or b.last < a.last):
            found.append(_broken("up"))
        if order == "down" and b.first > a.first:
            found.append(_broken("down"))
    return found


def path_cost(world: World, have: Iterable[ItemId], path: Chain) -> int:
    """300 x step + seconds, every entry at its full dose."""
    return 300 * _steps(world, have, path) + sum(work_s(world.drills[i]) for i, _ in path)
