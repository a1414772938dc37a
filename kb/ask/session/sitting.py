"""One sitting of a course as a session: what it may be made of, the best choice of it, and its blocks in order."""

from collections.abc import Collection, Iterator, Sequence
from itertools import combinations, pairwise
from typing import NamedTuple

from kb.ask.session.course import Course, held
from kb.ask.session.fitting import Fitted, Offer, Opener, Way, fit
from kb.ask.session.left_out import left_out
from kb.ask.session.records import Block, Session
from kb.ask.session.tasks import Task, Weigh, entry_task, finish_tasks, load_in_turn, opener_tasks, raise_tasks
from kb.ask.session.warm_up import Asked, asked_of, covers
from kb.ask.session.worth import MOST_FINISHES, OPENING_S, WORTH
from kb.dials import spans, step
from kb.loading import may_load
from kb.terms import DrillId, Load, Stage

__all__ = ["Laid", "kept_of", "lay_out", "session_of"]


class Laid(NamedTuple):
    """Everything that a sitting may be made of: tasks, which of its entries may be kept, and ways to finish.

    `kept` are places in the course; `ways` the same as tasks in their turn, and `ends` the finishes.
    """

    course: Course
    n: int
    asked: Asked
    raises: tuple[Task, ...]
    openers: tuple[Task, ...]
    kept: tuple[tuple[int, ...], ...]
    ways: tuple[tuple[Task, ...], ...]
    finishes: tuple[Task, ...]
    ends: tuple[tuple[Task, ...], ...]
    offer: Offer


def kept_of(course: Course, n: int, gone: frozenset[int]) -> tuple[tuple[int, ...], ...]:
    """What may be kept of the n-th sitting's entries, by place, most first; `gone` were dropped from earlier ones.

    Its last entry stays, and the first where the sitting before ends with it.
    """
    first, end = course.sittings[n]
    whole = tuple(range(first, end))
    if course.keeps is None:
        return (whole,)
    loose = whole[1 if n else 0 : -1]
    before = [at for at in range(first) if at not in gone]
    after = list(range(end, len(course.entries)))
    found = [whole]
    for size in range(1, len(loose) + 1):
        for dropped in combinations(loose, size):
            kept = tuple(at for at in whole if at not in dropped)
            if course.keeps([*before, *kept, *after]):
                found.append(kept)
    return tuple(found)


def _steps(course: Course, kept: Sequence[int]) -> int:
    """The sum of the steps between entries kept."""
    parts = spans(course.shelf.lift)
    return sum(step(course.entries[a].dials, course.entries[b].dials, parts) for a, b in pairwise(kept))


def lay_out(course: Course, n: int, seconds: int, gone: frozenset[int], *, weigh: Weigh, teach: bool) -> Laid:
    """Everything that the n-th sitting of a course may be made of in so many seconds."""
    first, end = course.sittings[n]
    entries = course.entries[first:end]
    asked = asked_of(entries, course.shelf.lift, course.shelf.drills)
    raising, openers = raise_tasks(course, teach=teach), opener_tasks(course, entries, asked, teach=teach)
    tasks = {
        at: entry_task(course, at, shared=n > 0 and at == first, weigh=weigh, teach=teach) for at in range(first, end)
    }
    kept = kept_of(course, n, gone)
    in_turn = [load_in_turn([tasks[at] for at in places]) for places in kept]
    finishes = finish_tasks(course, weigh=weigh, teach=teach)
    ends = _ends(finishes, in_turn[0][1], must=course.must_finish and n == len(course.sittings) - 1)
    whole = _steps(course, kept[0])
    ways = tuple(
        Way(
            slots=tuple(task.options for task in way),
            worth=-WORTH["step"][0] * max(0, _steps(course, places) - whole),
            covers=_opened(way, asked),
        )
        for places, (way, _) in zip(kept, in_turn, strict=True)
    )
    offer = Offer(
        seconds=seconds,
        raises=tuple(Way((task.options,)) for task in raising),
        openers=tuple(Opener(covers(task.drill, asked), task.options) for task in openers),
        opening_s=OPENING_S,
        joints=tuple(WORTH["joint"][0] + times * WORTH["asked"][0] for times in asked.times),
        ways=ways,
        ends=tuple(Way(tuple(task.options for task in end)) for end in ends),
    )
    return Laid(course, n, asked, raising, openers, kept, tuple(way for way, _ in in_turn), finishes, ends, offer)


def _opened(tasks: Sequence[Task], asked: Asked) -> int:
    """The joints that preparation among the entries opens already."""
    opened = 0
    for task in tasks:
        if task.drill.stage is Stage.PREPARE:
            opened |= covers(task.drill, asked)
    return opened


def _ends(finishes: Sequence[Task], bar: tuple[object, ...], *, must: bool) -> tuple[tuple[Task, ...], ...]:
    """The ways to finish: nothing, one drill or two, in their order; where strength must be worked on, not nothing."""
    own = WORTH["finish_cause"][0]
    found = []
    for size in range(MOST_FINISHES + 1):
        for chosen in combinations(finishes, size):
            if not must or any(task.amounts[0].worth == own for task in chosen):
                found.append(load_in_turn(chosen, bar)[0])
    return tuple(found) or ((),)


def session_of(laid: Laid, minutes: int) -> tuple[Session, frozenset[int]] | None:
    """The best session that a sitting allows, and the places of what it drops; None if not even the least fits."""
    best = fit(laid.offer)
    if best is None:
        return None
    course, n = laid.course, laid.n
    blocks = _linked(course, tuple(_blocks(laid, best)))
    dropped = frozenset(laid.kept[0]) - frozenset(laid.kept[best.way[0]])
    spare = laid.offer.seconds - best.seconds
    found = Session(
        minutes=minutes,
        lift=course.shelf.lift,
        blocks=blocks,
        left_out=(),
        spare_s=spare,
        n=n + 1,
        of=len(course.sittings),
        fault=course.fault,
        cause=course.cause,
        value=best.worth,
        optimal=course.proved,
        worked=course.worked,
        worked_cause=course.worked_cause,
    )
    return found._replace(
        left_out=tuple(left_out(course, laid.asked, laid.openers, laid.finishes, found, dropped))
    ), dropped


def _blocks(laid: Laid, best: Fitted) -> Iterator[Block]:
    """What was chosen, in order from the first second."""
    chosen: list[tuple[Task, int]] = []
    if best.raising is not None:
        which, picks = best.raising
        chosen.append((laid.raises[which], picks[0]))
    chosen += [(task, pick) for task, pick in zip(laid.openers, best.openers, strict=True) if pick is not None]
    chosen += zip(laid.ways[best.way[0]], best.way[1], strict=True)
    chosen += zip(laid.ends[best.end[0]], best.end[1], strict=True)
    start = 0
    met: dict[DrillId, list[Load]] = {}
    for task, pick in chosen:
        amount, seconds = task.amounts[pick], task.seconds(pick)
        before = met.setdefault(task.drill.id, [])
        yield Block(
            start_s=start,
            seconds=seconds,
            part=task.part,
            drill=task.drill,
            load=task.load,
            dials=task.dials,
            work=task.work,
            dose=amount.dose,
            cut=amount.cut,
            gear=task.gear,
            loaded=task.loaded,
            loading_s=task.loading_s,
            teach_s=task.teach_s,
            unloaded_first=task.load is Load.LIGHT and not may_load(task.drill, task.load, before),
            gone=task.gone,
        )
        before.append(task.load)
        start += seconds


def _linked(course: Course, blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """The blocks, each with what to do if its standard isn't met, or is met early: the next one up to the lift."""
    found: list[Block] = []
    done: frozenset[DrillId] = frozenset()
    for block, after in zip(blocks, (*blocks[1:], None), strict=True):
        goes_on = after is not None and after.part != "finish" and block.part != "finish"
        found.append(
            block._replace(
                if_not=_easier(course, block, done),
                if_early=after.drill.id if after is not None and goes_on else None,
            )
        )
        done |= {block.drill.id}
    return tuple(found)


def _easier(course: Course, block: Block, done: Collection[DrillId]) -> DrillId | None:
    """The first of a drill's easier versions that can be done here and now, no heavier than the drill itself."""
    for easier in block.drill.regressions:
        drill = course.shelf.drills.get(easier.drill)
        if drill is None or drill.id not in course.fits or drill.load[0] > block.load:
            continue
        if held(drill, course.unsure, frozenset(done)):
            return drill.id
    return None
