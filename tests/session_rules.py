"""A session judged from outside: time, gear, order, doses and lawfulness, read again from DESIGN.md and the entries.

Nothing of the program's arithmetic is used, only its records and the tests' own reading of the rules.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from lawful import broken_path_rules, broken_rules
from reading import World, caps, of_lift

from kb.ask.question import ChainQuestion
from kb.ask.session.records import Block, Session
from kb.terms import Dose, Drill, DrillId, ItemId, Load, Stage

__all__ = ["broken_alone", "broken_fault_sessions", "broken_path_sessions", "chain_of", "dose_s"]

ORDER = ("warm-up", "chain", "lift", "finish")
CHANGE_OVER_S, DISCS_S, OPENING_S = 30, 30, 300


def _sets(dose: Dose) -> list[int]:
    """Repetitions of each round: of good ones as many as are expected, shared out over the fewest sets."""
    if not dose.good:
        return [dose.reps] * dose.rounds
    left = -(-dose.good * 100 // dose.success)
    count = -(-left // dose.reps)
    sets = []
    for n in range(count):
        share = -(-left // (count - n))
        sets.append(share)
        left -= share
    return sets


def dose_s(dose: Dose) -> int:
    """A dose alone, s: work of each round, a rest between two, or whole intervals."""
    if dose.every_s:
        return dose.rounds * dose.every_s
    rep = sum(dose.tempo) if dose.tempo is not None else 4
    work = sum(dose.sides * (reps * rep + dose.hold_s) for reps in _sets(dose))
    return work + dose.rest_s * (len(_sets(dose)) - 1)


def _doses(block: Block) -> Iterator[str]:
    """A dose is the entry's, less of it with all else alike, or half as much again; a check begins with one round."""
    given, asked = block.dose, block.drill.dose
    if block.work or len(_sets(given)) > 1:
        alike = given._replace(rounds=asked.rounds, good=asked.good) == asked
    else:
        alike = (given.reps, given.tempo, given.hold_s, given.sides) == (
            _sets(asked)[0],
            asked.tempo,
            asked.hold_s,
            asked.sides,
        )
    if not alike or not _sets(given):
        yield f"{block.drill.id}: {given} is no dose of {asked}"
    most = asked.rounds + asked.rounds // 2 if block.work else asked.rounds
    if given.rounds > most or given.good > asked.good:
        yield f"{block.drill.id}: more than half as much again"
    if block.cut != (block.work and len(_sets(given)) < len(_sets(asked))):
        yield f"{block.drill.id}: cut says {block.cut}"
    built_up = block.part == "lift" and block.load > Load.LIGHT
    if (block.part == "finish" or built_up) and 2 * len(_sets(given)) < len(_sets(asked)):
        yield f"{block.drill.id}: less than half"


def _time(session: Session) -> Iterator[str]:
    at, bar = 0, None
    for block in session.blocks:
        if block.start_s != at:
            yield f"{block.drill.id} begins at {block.start_s}, not {at}"
        own = CHANGE_OVER_S + block.drill.set_up_s + block.loading_s + block.teach_s + dose_s(block.dose)
        if block.seconds != own:
            yield f"{block.drill.id} takes {own}, not {block.seconds}"
        uses_bar = block.load >= Load.LIGHT and any(gear.using == "bar" for gear in block.gear)
        if uses_bar:
            # unless weights are known, discs stay on for a drill that needs none: both are a light bar
            discs = any(gear.using == "discs" for gear in block.gear)
            now: object = (block.load if discs else bar) if block.loaded is None else block.loaded.discs_kg or None
            if block.loading_s != (DISCS_S if now != bar else 0):
                yield f"{block.drill.id}: {block.loading_s} s for discs from {bar} to {now}"
            bar = now
        elif block.loading_s:
            yield f"{block.drill.id}: discs without a bar"
        at += block.seconds
    if session.spare_s < 0 or at + session.spare_s != 60 * session.minutes:
        yield f"{at} s and {session.spare_s} s spare in {session.minutes} min"


def _room(world: World, have: frozenset[ItemId], block: Block) -> Iterator[str]:
    drill, under = block.drill, caps(world, block.drill, have)
    if under is None or not of_lift(drill, world.lift):
        yield f"{drill.id} can't be done here"
    elif not drill.load[0] <= block.load <= min(drill.load[1], under[1]):
        yield f"{drill.id} at {block.load.word}"
    elif block.dials.speed > under[0] or block.dials.catch > under[2]:
        yield f"{drill.id} is faster or deeper than the gear allows"
    if any(gear.using not in have for gear in block.gear):
        yield f"{drill.id} uses what isn't there"


def _quick(drill: Drill) -> bool:
    """Quick repetitions with nothing held raise warmth."""
    dose = drill.dose
    return dose.reps > 0 and not dose.hold_s and dose.tempo is not None and sum(dose.tempo) <= 2


def _warm(world: World, have: frozenset[ItemId], session: Session, unsure: Iterable[DrillId]) -> Iterator[str]:
    """Raise, then open what later drills ask for, five minutes of it at most; nothing opens in vain."""
    blocks = [block for block in session.blocks if block.part == "warm-up"]
    missing = set(unsure)
    can = [
        drill
        for drill in world.drills.values()
        if drill.stage is Stage.PREPARE
        and of_lift(drill, world.lift)
        and _quick(drill)
        and caps(world, drill, have) is not None
        and not any(set(group) <= missing for group in drill.groups)
    ]
    if bool(can) != bool(blocks and _quick(blocks[0].drill)) or any(_quick(block.drill) for block in blocks[1:]):
        yield "warmth isn't raised first"
    openers = [block for block in blocks if not _quick(block.drill)]
    if sum(block.seconds for block in openers) > OPENING_S:
        yield "opening takes too long"
    later = [block.drill for block in session.blocks if block.part in ("chain", "lift")]
    asked = {place for drill in later for lift, place in drill.target_position.items() if lift in world.lift.serves}
    asked |= {timed.position for timed in world.lift.timeline if world.lift.drill in {drill.id for drill in later}}
    for block in openers:
        if not set(block.drill.for_positions) & asked or not block.drill.opens:
            yield f"{block.drill.id} opens nothing that is asked for"
    for n, block in enumerate(openers):
        others = {joint for m, other in enumerate(openers) if m != n for joint in other.drill.opens}
        if set(block.drill.opens) <= others:
            yield f"{block.drill.id} opens what others open"


def _order(session: Session) -> Iterator[str]:
    parts = [ORDER.index(block.part) for block in session.blocks]
    if parts != sorted(parts) or parts.count(2) > 1:
        yield f"parts in the order {parts}"
    for block in session.blocks:
        fits = {"warm-up": Stage.PREPARE, "finish": Stage.FINISH}.get(block.part)
        if fits is not None and block.drill.stage is not fits:
            yield f"{block.drill.id} in the {block.part}"
        if block.load > Load.LIGHT and block.part in ("warm-up", "chain"):
            yield f"{block.drill.id} above light"
    met = [block.drill.id for block in session.blocks if block.part == "warm-up"]
    if len(met) != len(set(met)):
        yield "a warm-up drill twice"


def _turns(world: World, have: frozenset[ItemId], session: Session) -> Iterator[str]:
    """If it isn't met: one of the entry's easier versions that can be done; if met early: the next."""
    for block, after in pairwise([*session.blocks, None]):
        assert block is not None
        early = after.drill.id if after is not None and after.part != "finish" and block.part != "finish" else None
        if block.if_early != early:
            yield f"{block.drill.id}: early leads to {block.if_early}"
        if block.if_not is not None:
            easier = world.drills[block.if_not]
            under = caps(world, easier, have)
            if block.if_not not in {each.drill for each in block.drill.regressions} or under is None:
                yield f"{block.drill.id}: {block.if_not} is no easier version here"
            elif easier.load[0] > min(block.load, under[1]):
                yield f"{block.drill.id}: {block.if_not} is heavier"


def broken_alone(world: World, have: frozenset[ItemId], session: Session, unsure: Iterable[DrillId]) -> list[str]:
    """What is wrong with one session whatever it is for."""
    found = [*_time(session), *_order(session), *_warm(world, have, session, unsure), *_turns(world, have, session)]
    for block in session.blocks:
        found += [*_doses(block), *_room(world, have, block)]
    left = [each.drill.id for each in session.left_out]
    done = {block.drill.id for block in session.blocks}
    found += [f"{each} is left out and done" for each in left if each in done]
    found += ["left out without a reason" for each in session.left_out if not each.why]
    return found


def chain_of(sessions: Sequence[Session]) -> list[tuple[DrillId, Load]]:
    """The drills of some sessions up to the lift, each that is shared between two once."""
    found: list[tuple[DrillId, Load]] = []
    for n, session in enumerate(sessions):
        part = [(block.drill.id, block.load) for block in session.blocks if block.part in ("chain", "lift")]
        if n and found and part and part[0] == found[-1]:
            part = part[1:]
        found += part
    return found


def _series(sessions: Sequence[Session]) -> Iterator[str]:
    for n, session in enumerate(sessions, 1):
        if (session.n, session.of) != (n, len(sessions)):
            yield f"session {session.n} of {session.of} is the {n}th of {len(sessions)}"
        lifts = [block for block in session.blocks if block.part == "lift"]
        if bool(lifts) != (n == len(sessions)):
            yield f"session {n} of {len(sessions)} has {len(lifts)} lifts"
    for before, after in pairwise(sessions):
        last = [block for block in before.blocks if block.part == "chain"][-1]
        first = next(block for block in after.blocks if block.part in ("chain", "lift"))
        if (last.drill.id, last.load) != (first.drill.id, first.load) or first.work:
            yield f"session {after.n} doesn't begin with the last drill as a check"


def broken_fault_sessions(world: World, question: ChainQuestion, sessions: Sequence[Session]) -> list[str]:
    """What is wrong with the sessions for a fault: each alone, and the chain that they lead through together."""
    from reading import read

    reading = read(world, question)
    found = [*_series(sessions)]
    for session in sessions:
        found += broken_alone(world, question.have, session, reading.doubt)
    found += broken_rules(world, question, chain_of(sessions), limits=False)
    for session in sessions:
        met = {block.drill.id for each in sessions for block in each.blocks}
        for block in session.blocks:
            missing = [group for group in block.drill.groups if set(group) <= reading.doubt]
            if block.part == "finish" and any(not met & set(group) for group in missing):
                found.append(f"{block.drill.id} finishes on what isn't held")
            if block.part == "finish" and missing and block.load > Load.LIGHT:
                found.append(f"{block.drill.id} finishes heavy on what is only learned now")
        for block in session.blocks:
            works = reading.works_on((block.drill.id, block.load)) or block.drill.id == world.lift.drill
            if block.part == "chain" and block.work and not works:
                found.append(f"{block.drill.id} is work")
    return found


def broken_path_sessions(
    world: World, holds: frozenset[DrillId], have: frozenset[ItemId], sessions: Sequence[Session]
) -> list[str]:
    """What is wrong with sessions along a path: each alone, the path itself, and more than two new drills in one."""
    found = [*_series(sessions), *broken_path_rules(world, holds, have, chain_of(sessions))]
    met = set(holds)
    unsure = set(world.drills) - holds
    for session in sessions:
        found += broken_alone(world, have, session, unsure)
        new = {
            block.drill.id
            for block in session.blocks
            if block.part in ("chain", "lift") and block.drill.stage is not Stage.PREPARE
        } - met
        if len(new) > 2:
            found.append(f"session {session.n} has {sorted(new)} new")
        met |= new
    return found
