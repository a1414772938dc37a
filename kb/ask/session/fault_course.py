"""The course of a fault: its chain within the minutes that the least warm-up leaves, or that chain in sittings.

It is the best chain that fits when each drill worked on gets at least half its dose; where none does, the best of
all, cut so that it does (or, where two neighbours would still be too long, with one round of each). How much of each
dose there is time for is then chosen in `kb.ask.session.fitting`.
"""

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

from kb.ask.chain import NoChain
from kb.ask.choices import Choices, choices_of, finish_of, why_not
from kb.ask.field import Field
from kb.ask.matter import Matter
from kb.ask.question import MOST_WORK
from kb.ask.route import Route, route_of
from kb.ask.search import BUDGET, Found, Limits, search
from kb.ask.session.course import Course, cut_course, entry_seconds, held, least_raise_s, on_bar
from kb.ask.session.warm_up import asked_positions
from kb.ask.session.worth import WORTH, at_least_half, one_round
from kb.kit import gear_at
from kb.terms import Dose, Drill, Load, Stage

__all__ = ["courses"]


def courses(matter: Matter, seconds: int, *, teach: bool) -> Iterator[Course]:
    """Ways to lead a fault's chain through in sittings of `seconds`, the one to prefer first.

    The chain gets what the least warm-up leaves. Raises NoChain when the kit or what is held allows no chain at all.
    """
    seconds -= least_raise_s(matter.shelf, matter.fits, matter.doubt, teach=teach)
    against = why_not(matter)
    if against:
        raise NoChain(against)
    choices = choices_of(matter)
    at_most = matter.question.at_most
    free = search(choices.field, Limits(), choices.must, budget=BUDGET)
    if free is None:
        raise NoChain("no order of the drills this kit allows leads to the lift")
    halves, ones = (_timed(matter, choices, dosed, teach=teach) for dosed in (at_least_half, one_round))
    limits = Limits(entries=at_most, work=MOST_WORK, seconds=seconds)
    found = free if _within(halves, free, limits) else search(halves, limits, choices.must, budget=BUDGET)
    if found is not None:
        yield _course(matter, choices, found, ((0, len(found.nodes)),))
    for field in (halves, ones):
        cut = _cut(matter, choices, field, free, seconds, teach=teach)
        if cut is not None:
            yield _course(matter, choices, free, cut)


def _discs(matter: Matter, drill: Drill, load: Load) -> bool:
    shelf, question = matter.shelf, matter.question
    return on_bar(gear_at(matter.fits[drill.id], load, question.have, shelf.items), load)


def _timed(matter: Matter, choices: Choices, dosed: Callable[[Dose], Dose], *, teach: bool) -> Field:
    """The search's field with what entries take in a session, `dosed` being what a drill worked on gets."""
    field, lift_drill = choices.field, matter.shelf.lift.drill
    seconds = [
        entry_seconds(
            drill,
            (dosed if field.addresses[n] or drill.id == lift_drill else one_round)(drill.dose),
            discs=_discs(matter, drill, load),
            teach=teach,
        )
        for n, (drill, load) in enumerate(choices.nodes)
    ]
    return field._replace(seconds=seconds)


def _within(field: Field, found: Found, limits: Limits) -> bool:
    return (
        (limits.entries is None or len(found.nodes) <= limits.entries)
        and (limits.work is None or sum(field.work[n] for n in found.nodes) <= limits.work)
        and (limits.seconds is None or sum(field.seconds[n] for n in found.nodes) <= limits.seconds)
    )


def _cut(
    matter: Matter, choices: Choices, field: Field, found: Found, seconds: int, *, teach: bool
) -> tuple[tuple[int, int], ...] | None:
    nodes = found.nodes
    each = [field.seconds[n] for n in nodes]
    shared = [
        entry_seconds(drill, one_round(drill.dose), discs=_discs(matter, drill, load), teach=teach)
        for drill, load in (choices.nodes[n] for n in nodes)
    ]

    def fits(first: int, end: int) -> bool:
        fresh = nodes[first + 1 if first else 0 : end]
        return end - first <= matter.question.at_most and sum(field.work[n] for n in fresh) <= MOST_WORK

    tested = [matter.tests(*choices.nodes[n]) for n in nodes]
    return cut_course(each, shared, seconds, fits, tested)


def _course(matter: Matter, choices: Choices, found: Found, sittings: tuple[tuple[int, int], ...]) -> Course:
    route = route_of(matter, choices, found)
    strength = matter.worked_cause.kind == "strength"
    nodes = found.nodes
    addressed = any(choices.field.addresses[n] for n in nodes)

    def keeps(kept: Sequence[int]) -> bool:
        # strengthening would do for rule 4, but a session that works on the cause keeps doing so
        some = any(choices.field.addresses[nodes[at]] for at in kept) or not addressed
        return some and _lawful(choices.field, [nodes[at] for at in kept])

    return Course(
        shelf=matter.shelf,
        have=matter.question.have,
        fits=matter.fits,
        entries=route.entries,
        sittings=sittings,
        unsure=matter.doubt,
        proved=route.optimal,
        keeps=keeps,
        fault=matter.fault,
        cause=matter.cause,
        worked=matter.worked,
        worked_cause=matter.worked_cause,
        finishes=tuple(_finishes(matter, route)),
        must_finish=strength and not addressed,
    )


def _lawful(field: Field, nodes: Sequence[int]) -> bool:
    """Whether a list of nodes is a lawful chain: rules 1 to 6, all but the limits."""
    first, has = nodes[0], 0
    if field.must_prepare and not field.prepares[first]:
        return False
    opens = field.addresses[first] if field.prepares[first] else field.may_open[first]
    if not opens or (first == field.goal and not field.goal_may_open) or nodes[-1] != field.goal:
        return False
    if not all(field.allows(a, b) for a, b in pairwise(nodes)):
        return False
    for n in nodes:
        if not all(group & has for group in field.groups[n]):
            return False
        has |= field.gains[n]
    return any(field.addresses[n] for n in nodes) or not field.must_address


def _finishes(matter: Matter, route: Route) -> Iterator[tuple[Drill, Load, int]]:
    """What to strengthen after the lift: drills for the cause, for another of the fault's, for the lift.

    At their most where all that must come before is held; where some of it is done only now, no more than light.
    """
    done = frozenset(entry.drill.id for entry in route.entries)
    own = {drill.id for drill in finish_of(matter)}
    positions = {each for entry in route.entries for each in asked_positions(entry.drill, matter.shelf.lift)}
    for drill in sorted(matter.shelf.drills.values(), key=lambda each: each.id):
        if drill.stage is not Stage.FINISH or drill.id not in matter.fits or not held(drill, matter.doubt, done):
            continue
        least, most = drill.load[0], min(drill.load[1], matter.fits[drill.id].load)
        load = most if held(drill, matter.doubt) else min(most, max(Load.LIGHT, least))
        if drill.id in own:
            yield drill, load, WORTH["finish_cause"][0]
        elif any(said.fault == matter.worked.id for said in drill.faults):
            yield drill, load, WORTH["finish_fault"][0]
        elif asked_positions(drill, matter.shelf.lift) & positions:
            yield drill, load, WORTH["finish_any"][0]
