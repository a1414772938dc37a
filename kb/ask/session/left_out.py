"""What a session leaves out, and why: joints not opened, drills dropped, strengthening there was no time for."""

from collections.abc import Collection, Iterator, Sequence

from kb.ask.session.course import Course, needs
from kb.ask.session.records import LeftOut, Session
from kb.ask.session.tasks import Task
from kb.ask.session.warm_up import Asked, asked_positions, covers, openers_of, raises
from kb.ask.session.worth import MOST_FINISHES, OPENING_S, WORTH
from kb.dose import minutes
from kb.terms import Drill, Stage

__all__ = ["left_out"]


def left_out(
    course: Course,
    asked: Asked,
    openers: Sequence[Task],
    finishes: Sequence[Task],
    session: Session,
    dropped: Collection[int],
) -> Iterator[LeftOut]:
    """Each drill that would have been of use and isn't done, in the order in which it would have come."""
    yield from _not_opened(course, asked, openers, session)
    used = {block.drill.id for block in session.blocks}
    for at in sorted(dropped):
        if course.entries[at].drill.id not in used:  # the lift may stand there twice, at two weights
            yield LeftOut(course.entries[at].drill, "no time; without it the next step is larger, so take that slowly")
    if len([block for block in session.blocks if block.part == "finish"]) < MOST_FINISHES:
        for task in finishes:
            if task.drill.id not in used and task.amounts[0].worth == WORTH["finish_cause"][0]:
                yield LeftOut(task.drill, f"no time ({minutes(task.seconds(0))} min); it would strengthen what is weak")


def _words(asked: Asked, joints: int) -> str:
    named = [joint.replace("-", " ") for n, joint in enumerate(asked.joints) if joints >> n & 1]
    return " and ".join(filter(None, (", ".join(named[:-1]), named[-1])))


def _not_opened(course: Course, asked: Asked, openers: Sequence[Task], session: Session) -> Iterator[LeftOut]:
    """For the joints that nothing opens the drill that would open most of them, then the next."""
    missing = (1 << len(asked.joints)) - 1
    spent = 0
    for block in session.blocks:
        if block.drill.stage is Stage.PREPARE and not raises(block.drill):
            missing &= ~covers(block.drill, asked)
            spent += block.seconds if block.part == "warm-up" else 0
    while missing:
        best = max(
            openers, key=lambda task: ((covers(task.drill, asked) & missing).bit_count(), -_least(task)), default=None
        )
        opened = covers(best.drill, asked) & missing if best is not None else 0
        if best is None or not opened:
            yield from _not_here(course, asked, missing)
            return
        missing &= ~opened
        enough = spent + _least(best) > OPENING_S
        why = f"{minutes(OPENING_S)} min of opening are enough" if enough else f"no time ({minutes(_least(best))} min)"
        yield LeftOut(best.drill, f"{why}; it would open {_words(asked, opened)}")


def _least(task: Task) -> int:
    return min(task.seconds(n) for n in range(len(task.amounts)))


def _not_here(course: Course, asked: Asked, missing: int) -> Iterator[LeftOut]:
    """The joints that no drill opens with what is there, and what one would need."""
    positions = {each for entry in course.entries for each in asked_positions(entry.drill, course.shelf.lift)}

    def serves(drill: Drill) -> bool:
        return drill.id not in course.fits and bool(covers(drill, asked) & missing)

    for drill in openers_of(course.shelf.drills.values(), asked, positions, serves):
        opened = covers(drill, asked) & missing
        if opened:
            missing &= ~opened
            yield LeftOut(drill, f"needs {needs(course, drill)}; it would open {_words(asked, opened)}")
