"""The cheapest lawful chain or path by a constraint solver, and by plain listing for small worlds.

A second and a third reading of DESIGN.md section 5: `Problem` turns a question into nodes (a drill at one load)
and a table of steps without the help of reading.py or the program; `best` gives it to CP-SAT as a circuit with
optional visits, `best_by_listing` tries one list after another. Conventions are those of reading.py and lawful.py.
"""

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, field, replace

from ortools.sat.python import cp_model
from reading import Entry, World

from kb.ask.question import ChainQuestion
from kb.terms import Catch, Cause, Drill, DrillId, Fault, ItemId, Load, Speed, Stage

__all__ = ["Found", "NotProvedError", "best", "best_by_listing", "best_path", "best_path_by_listing"]

SEED = 7
Found = tuple[int, list[Entry]]


class NotProvedError(AssertionError):
    """The solver ran out of time before it proved its answer."""


@dataclass(frozen=True)
class Node:
    """A drill at one load, where that puts its dials, what it is good for and what it takes."""

    drill: Drill
    load: Load
    speed: int
    catch: int
    first: int
    last: int
    out: int
    seconds: int
    adds: bool = False
    shows: bool = False
    shows_last: bool = False

    @property
    def prepares(self) -> bool:
        """It is preparation."""
        return self.drill.stage == Stage.PREPARE

    @property
    def bridges(self) -> bool:
        """It neither addresses nor tests, past preparation."""
        return not (self.prepares or self.adds or self.shows)

    @property
    def price(self) -> int:
        """What it adds to a chain beside its step."""
        return self.seconds + (600 if self.bridges else 0)


@dataclass
class Problem:
    """Nodes, steps and the rules that a list of nodes has to keep."""

    nodes: list[Node] = field(default_factory=list)
    steps: list[list[int]] = field(default_factory=list)
    final: int = -1
    owed: list[list[list[int]]] = field(default_factory=list)
    may_open: list[bool] = field(default_factory=list)
    arcs: set[tuple[int, int]] = field(default_factory=set)
    some_address: bool = False
    at_most: int | None = None
    most_work: int | None = None
    most_seconds: int | None = None
    before: set[tuple[int, int]] = field(default_factory=set)


# --- the pieces that chains and paths share ---


def _counts(world: World, drill: Drill) -> bool:
    return world.lift.id in drill.lifts or any(part in drill.lifts for part in world.lift.parts)


def _capped(world: World, drill: Drill, have: Collection[ItemId]) -> tuple[int, int, int] | None:
    top = [int(Speed.FULL), int(Load.WORKING), int(Catch.FULL)]
    for item in drill.equipment:
        if item in have:
            continue
        chosen = None
        for other in sorted(world.items[item].stand_ins, key=lambda s: s.item):
            if other.item in have and (chosen is None or other.load > chosen.load):
                chosen = other
        if chosen is None:
            return None
        top = [min(x) for x in zip(top, (chosen.speed, chosen.load, chosen.catch), strict=True)]
    return top[0], top[1], top[2]


def _bits(low: int, high: int) -> int:
    return sum(1 << n for n in range(low, high + 1))


def _node(world: World, drill: Drill, load: int, cap: tuple[int, int, int]) -> Node:
    where = {point: n for n, point in enumerate(world.lift.points)}
    reach = next((drill.reach[k] for k in (world.lift.id, *world.lift.parts) if k in drill.reach), None)
    first, last = (where[reach[0]], where[reach[1]]) if reach else (0, 0)
    out = sum(1 << where[p] for p in set(drill.leaves_out) if p in where)
    return Node(drill, Load(load), min(drill.speed, cap[0]), min(drill.catch, cap[2]), first, last, out, 0)


def _shows(world: World, drill: Drill, load: int, cap: tuple[int, int, int], fault: Fault, cause: Cause) -> bool:
    if drill.stage in (Stage.PREPARE, Stage.FINISH) or not _counts(world, drill):
        return False
    if drill.made_of:
        members = (world.drills[i] for i in drill.made_of if i in world.drills)
        return any(_shows(world, part, min(load, part.load[1]), cap, fault, cause) for part in members)
    node, points = _node(world, drill, load, cap), list(world.lift.points)
    for asked in (fault.shows_at, cause.shows_at):
        if node.speed < asked.speed or load < asked.load or node.catch < asked.catch:
            return False
    seen = _bits(node.first, node.last) & ~node.out
    phases = [(points.index(a), points.index(b)) for a, b in fault.phases if a in points and b in points]
    return any(_bits(a, b) & seen == _bits(a, b) for a, b in phases)


def _adds(drill: Drill, load: int, fault: Fault, cause: Cause) -> bool:
    if cause.kind == "strength" and load < Load.LIGHT:
        return False
    return (fault.id, None) in [(s.fault, s.cause) for s in drill.faults] or (fault.id, cause.id) in [
        (s.fault, s.cause) for s in drill.faults
    ]


def _dose(drill: Drill, *, full: bool) -> int:
    dose, rounds = drill.dose, drill.dose.rounds if full else 1
    rep = 4 if dose.tempo is None else sum(dose.tempo)
    one = dose.sides * dose.reps * rep + dose.sides * dose.hold_s
    if dose.good:
        # set by set: as many as are left, shared out among the sets that are left
        left, done = -(-dose.good * 100 // dose.success), []
        while left:
            done.append(-(-left // -(-left // dose.reps)))
            left -= done[-1]
        each = [dose.sides * (reps * rep + dose.hold_s) for reps in done]
        return 30 + drill.set_up_s + (sum(each) + dose.rest_s * (len(each) - 1) if full else each[0])
    if dose.every_s and full:
        return 30 + drill.set_up_s + rounds * dose.every_s
    return 30 + drill.set_up_s + rounds * one + (rounds - 1) * dose.rest_s


def _along(world: World, low: int, high: int, *, start: bool) -> int:
    """Notches of an end that moves between two points: part by part, a whole one at a time."""
    notches, n = 0, 0
    passed = range(low, high) if start else range(low + 1, high + 1)
    for part in world.lift.part_points:
        here = [p for p in range(n, n + len(part)) if p in passed]
        notches += 1 if world.lift.parts and len(here) == len(part) else len(here)
        n += len(part)
    return notches


def _step(world: World, a: Node, b: Node) -> int:
    if a.prepares:
        return 0 if b.prepares else 1
    total = 4 * (a.drill.stage - b.drill.stage) if a.drill.stage > b.drill.stage else 0
    low, high = sorted((a.first, b.first))
    passed = _along(world, low, high, start=True)
    total += 2 * passed if b.first == high else passed * passed
    low, high = sorted((a.last, b.last))
    passed = _along(world, low, high, start=False)
    total += 2 * passed if b.last == low else passed * passed
    for point in range(len(world.lift.points)):
        was_out, is_out, inside = a.out >> point & 1, b.out >> point & 1, b.first <= point <= b.last
        total += 1 if (is_out and not was_out) or (was_out and not is_out and inside) else 0
    turns = [(b.load - a.load, 1)]
    if a.speed == 0:
        total += b.speed
    else:
        turns.append((b.speed - a.speed, 1))
    if a.catch and b.catch:
        turns.append((b.catch - a.catch, 1))
    elif a.catch:
        total += 1
    else:
        total += b.catch
    total += sum(n * n if n > 0 else 2 * n * n for n, _ in turns)
    if a.drill.aid and not b.drill.aid:
        total += 1
    if b.drill.aid and not a.drill.aid:
        total += 2
    return total


def _fill(problem: Problem, world: World, groups: Callable[[Drill], list[tuple[DrillId, ...]]]) -> None:
    """Fill in the steps, the arcs that stand to be used, and which nodes serve each group."""
    nodes = problem.nodes
    at: dict[DrillId, list[int]] = {}
    for n, node in enumerate(nodes):
        at.setdefault(node.drill.id, []).append(n)
    problem.owed = [[[k for m in group for k in at.get(m, [])] for group in groups(node.drill)] for node in nodes]
    problem.steps = [[0 if b.prepares and not a.prepares else _step(world, a, b) for b in nodes] for a in nodes]
    final, problem.before = nodes[problem.final], set()
    for i, a in enumerate(nodes):
        for j, b in enumerate(nodes):
            same = a.drill.id == b.drill.id
            if same and a.load < b.load:
                problem.before.add((i, j))
            if i == j or i == problem.final or (b.prepares and not a.prepares) or (same and a.load >= b.load):
                continue
            if j == problem.final and final.load > Load.LIGHT and not (same and a.load == Load.LIGHT):
                continue
            problem.arcs.add((i, j))
    problem.may_open = [True if n != problem.final else final.load <= Load.LIGHT for n in range(len(nodes))]


# --- chains ---


def _lift_load(world: World, question: ChainQuestion, fault: Fault, cause: Cause) -> int | None:
    drill = world.drills[world.lift.drill]
    cap = _capped(world, drill, question.have)
    if cap is None or cap[1] < drill.load[0]:
        return None
    most = min(drill.load[1], cap[1])
    if question.load is not None:
        load = int(question.load)
    else:
        load = int(Load.LIGHT)
        while load < most and not _shows(world, drill, load, cap, fault, cause):
            load += 1
        if not _shows(world, drill, min(load, most), cap, fault, cause):
            return None
    return sorted((drill.load[0], load, most))[1]


@dataclass(frozen=True)
class Matter:
    """A chain's question: f and its cause, g and its cause (what is worked on), l, caps, and what is in doubt."""

    world: World
    fault: Fault
    cause: Cause
    worked: Fault
    worked_cause: Cause
    target: int
    caps: dict[DrillId, tuple[int, int, int] | None]
    drills: list[Drill]
    doubt: set[DrillId]

    def loads(self, drill: Drill) -> list[int]:
        """The loads that `drill` may have in a chain."""
        cap = self.caps[drill.id]
        if cap is None:
            return []
        own = list(range(drill.load[0], min(drill.load[1], cap[1]) + 1))
        goal = self.target if drill.id == self.world.lift.drill else None
        return [load for load in own if load <= min(self.target, Load.LIGHT) or load == goal]

    def shows(self, drill: Drill, load: int, fault: Fault, cause: Cause) -> bool:
        """Whether `drill` tests at `load` with what is there."""
        cap = self.caps[drill.id]
        return cap is not None and _shows(self.world, drill, load, cap, fault, cause)

    def groups(self, drill: Drill) -> list[tuple[DrillId, ...]]:
        """Groups all of whose members are in doubt."""
        every = [*drill.prerequisites, *[(part,) for part in drill.made_of]]
        return [group for group in every if all(m in self.doubt for m in group)]

    def node(self, drill: Drill, load: int) -> Node:
        """The drill at that load, judged."""
        plain = _node(self.world, drill, load, self.caps[drill.id] or (0, 0, 0))
        adds = _adds(drill, load, self.worked, self.worked_cause)
        return replace(
            plain,
            seconds=_dose(drill, full=adds or drill.id == self.world.lift.drill),
            adds=adds,
            shows=self.shows(drill, load, self.worked, self.worked_cause),
            shows_last=self.shows(drill, load, self.fault, self.cause),
        )


def _matter(world: World, question: ChainQuestion) -> Matter | None:
    fault = world.faults[question.fault]
    cause = next(c for c in fault.causes if question.cause in (None, c.id))
    g, gc = fault, cause
    if cause.kind == "earlier" and cause.earlier:
        g = world.faults[cause.earlier]
        gc = next(c for c in g.causes if c.kind != "earlier")
    target = _lift_load(world, question, fault, cause)
    caps = {i: _capped(world, d, question.have) for i, d in world.drills.items()}
    drills = [d for d in world.drills.values() if _counts(world, d) and d.stage != Stage.FINISH]
    if target is None:
        return None
    doubt = {d.id for d in drills if _adds(d, d.load[1], g, gc)}
    for d in drills:
        cap = caps[d.id]
        highest = min(d.load[1], cap[1], target) if cap else -1
        if cap and d.load[0] <= highest and _shows(world, d, highest, cap, g, gc):
            doubt.add(d.id)
    return Matter(world, fault, cause, g, gc, target, caps, drills, doubt - question.holds)


def _doable(matter: Matter) -> set[DrillId]:
    light, found = min(matter.target, int(Load.LIGHT)), set[DrillId]()
    for _ in matter.drills:
        for d in matter.drills:
            cap = matter.caps[d.id]
            if cap and d.load[0] <= min(cap[1], light) and all(found & set(group) for group in matter.groups(d)):
                found.add(d.id)
    return found


def _finishes(matter: Matter) -> bool:
    for d in matter.world.drills.values():
        cap = matter.caps[d.id]
        if d.stage != Stage.FINISH or not cap or not _counts(matter.world, d) or d.load[0] > cap[1]:
            continue
        if _adds(d, min(d.load[1], cap[1]), matter.worked, matter.worked_cause):
            return True
    return False


def _chain_problem(world: World, question: ChainQuestion, *, limits: bool) -> Problem | None:
    matter, lift = _matter(world, question), world.drills[world.lift.drill]
    if matter is None or not matter.shows(lift, matter.target, matter.fault, matter.cause):
        return None
    doable, mobility = _doable(matter), matter.worked_cause.kind == "mobility"
    every = [matter.node(d, load) for d in matter.drills if d.id in doable for load in matter.loads(d)]
    every = [node for node in every if node.drill.bridge or not node.bridges]
    tested = any(node.shows_last and node.drill is not lift for node in every)
    problem = Problem(nodes=[node for node in every if mobility or node.adds or not node.prepares])
    goals = [n for n, node in enumerate(problem.nodes) if node.drill is lift and node.load == matter.target]
    if not goals:
        return None
    problem.final = final = goals[0]
    _fill(problem, world, matter.groups)
    for n, node in enumerate(problem.nodes):
        first_ok = node.prepares or node.adds or node.shows
        problem.may_open[n] &= first_ok if not mobility else node.prepares and node.adds
        if not first_ok:
            problem.arcs -= {(i, n) for i, a in enumerate(problem.nodes) if a.prepares}
        if tested and not node.shows_last:
            problem.arcs.discard((n, final))
    problem.may_open[final] &= not tested
    problem.some_address = matter.worked_cause.kind != "strength" or not _finishes(matter)
    if limits:
        problem.at_most, problem.most_work, problem.most_seconds = question.at_most, 4, question.seconds
    return problem


def best(
    world: World,
    question: ChainQuestion,
    *,
    limits: bool = True,
    time_limit: float = 60.0,
    below: int | None = None,
) -> Found | None:
    """The cheapest lawful chain and its cost, proved; None if there is none (within K and T, unless `limits` is False).

    With `below` only chains that cost less count: none is quicker to prove than which is cheapest. NotProvedError if
    `time_limit` seconds do not do.
    """
    problem = _chain_problem(world, question, limits=limits)
    return None if problem is None else _solve(problem, time_limit, below)


def best_by_listing(world: World, question: ChainQuestion, *, limits: bool = True) -> Found | None:
    """The same by trying every list that a small world allows."""
    problem = _chain_problem(world, question, limits=limits)
    return None if problem is None else _list(problem)


# --- paths ---


def _built_on(world: World, lift: Drill, groups: Callable[[Drill], list[tuple[DrillId, ...]]]) -> set[DrillId]:
    found, grown = {lift.id}, True
    while grown:
        more = {m for i in found for group in groups(world.drills[i]) for m in group if m in world.drills}
        grown = not more <= found
        found |= more
    return found


def _path_problem(world: World, holds: Collection[DrillId], have: Collection[ItemId], order: str) -> Problem | None:
    lift = world.drills[world.lift.drill]
    cap = _capped(world, lift, have)
    if cap is None or cap[1] < lift.load[0]:
        return None
    target = min(lift.load[1], cap[1])

    def groups(d: Drill) -> list[tuple[DrillId, ...]]:
        every = [*d.prerequisites, *[(part,) for part in d.made_of]]
        return [group for group in every if not any(m in holds for m in group)]

    built_on = _built_on(world, lift, groups)
    problem = Problem()
    for d in world.drills.values():
        cap = _capped(world, d, have)
        stepping_stone = not d.bridge and (d.id in holds or d.id not in built_on) and d is not lift
        if cap is None or not _counts(world, d) or d.stage == Stage.FINISH or stepping_stone:
            continue
        for load in range(d.load[0], min(d.load[1], cap[1], target if d is lift else int(Load.LIGHT)) + 1):
            if load > Load.LIGHT and load != target:
                continue
            if d is lift and load == target:
                problem.final = len(problem.nodes)
            # nothing is a bridge in a path: it only takes its seconds
            problem.nodes.append(replace(_node(world, d, load, cap), seconds=_dose(d, full=True), adds=True))
    _fill(problem, world, groups)
    middle = [(n, a) for n, a in enumerate(problem.nodes) if a.drill.stage in (Stage.SEGMENT, Stage.JOIN)]
    for i, a in middle:
        for j, b in middle:
            falls = (order == "up" and (b.first < a.first or b.last < a.last)) or (
                order == "down" and b.first > a.first
            )
            if falls:
                problem.before.add((j, i))
                problem.arcs.discard((i, j))
    return problem


def best_path(
    world: World,
    holds: Collection[DrillId],
    have: Collection[ItemId],
    order: str = "either",
    *,
    time_limit: float = 60.0,
) -> Found | None:
    """The cheapest lawful path and its cost, proved; None if there is none."""
    problem = _path_problem(world, holds, have, order)
    return None if problem is None else _solve(problem, time_limit)


def best_path_by_listing(
    world: World, holds: Collection[DrillId], have: Collection[ItemId], order: str = "either"
) -> Found | None:
    """The same by trying every list that a small world allows."""
    problem = _path_problem(world, holds, have, order)
    return None if problem is None else _list(problem)


# --- by constraint solver ---


def _solve(problem: Problem, time_limit: float, below: int | None = None) -> Found | None:
    model, n = cp_model.CpModel(), len(problem.nodes)
    most = min(n, problem.at_most) if problem.at_most is not None else n
    if most < 1:
        return None
    used = [model.new_bool_var(f"used {i}") for i in range(n)]
    place = [model.new_int_var(0, most - 1, f"place {i}") for i in range(n)]
    model.add(used[problem.final] == 1)
    circuit: list[tuple[int, int, cp_model.LiteralT]] = [(problem.final, n, model.new_bool_var("end"))]
    terms: list[cp_model.LinearExprT] = [node.price * used[i] for i, node in enumerate(problem.nodes)]
    for i in range(n):
        circuit.append((i, i, ~used[i]))
        if problem.may_open[i]:
            opens = model.new_bool_var(f"open {i}")
            circuit.append((n, i, opens))
            model.add(place[i] == 0).only_enforce_if(opens)
    for i, j in sorted(problem.arcs):
        arc = model.new_bool_var(f"{i} > {j}")
        circuit.append((i, j, arc))
        model.add(place[j] == place[i] + 1).only_enforce_if(arc)
        terms.append(300 * problem.steps[i][j] * arc)
    model.add_circuit(circuit)
    for i, j in sorted(problem.before):
        if (j, i) in problem.before:
            model.add_bool_or(~used[i], ~used[j])
        else:
            model.add(place[i] < place[j]).only_enforce_if(used[i], used[j])
    for i, groups in enumerate(problem.owed):
        for group in groups:
            serving = [used[problem.final].negated()]
            for k in group:
                serves = model.new_bool_var(f"{k} for {i}")
                model.add_implication(serves, used[k])
                model.add(place[k] < place[i]).only_enforce_if(serves)
                serving.append(serves)
            model.add_bool_or([*serving, ~used[i]])
    _limit(model, problem, used)
    model.add(sum(terms) < (below if below is not None else cp_model.INT32_MAX))
    model.minimize(sum(terms))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = SEED
    solver.parameters.max_time_in_seconds = time_limit
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return None
    if status != cp_model.OPTIMAL:
        raise NotProvedError(solver.status_name(status))
    order = sorted((i for i in range(n) if solver.value(used[i])), key=lambda i: solver.value(place[i]))
    return round(solver.objective_value), [(problem.nodes[i].drill.id, problem.nodes[i].load) for i in order]


def _limit(model: cp_model.CpModel, problem: Problem, used: Sequence[cp_model.IntVar]) -> None:
    pairs = list(zip(problem.nodes, used, strict=True))
    lift = problem.nodes[problem.final].drill
    if problem.some_address:
        model.add_bool_or([x for node, x in pairs if node.adds])
    if problem.at_most is not None:
        model.add(sum(used) <= problem.at_most)
    if problem.most_work is not None:
        model.add(sum(x for node, x in pairs if node.adds and node.drill is not lift) <= problem.most_work)
    if problem.most_seconds is not None:
        model.add(sum(node.seconds * x for node, x in pairs) <= problem.most_seconds)


# --- by listing ---


def _list(problem: Problem) -> Found | None:
    found: Found | None = None
    for cost, chain in _lists(problem, [], 0, [None]):
        if found is None or cost < found[0]:
            found = cost, [(problem.nodes[i].drill.id, problem.nodes[i].load) for i in chain]
    return found


def _allowed(problem: Problem, so_far: list[int], n: int) -> bool:
    chain = [problem.nodes[i] for i in (*so_far, n)]
    lift = problem.nodes[problem.final].drill
    return (
        n not in so_far
        and ((so_far[-1], n) in problem.arcs if so_far else problem.may_open[n])
        and not any((n, i) in problem.before for i in so_far)
        and all(set(group) & set(so_far) for group in problem.owed[n])
        and (problem.at_most is None or len(chain) <= problem.at_most)
        and (problem.most_work is None or sum(x.adds and x.drill is not lift for x in chain) <= problem.most_work)
        and (problem.most_seconds is None or sum(x.seconds for x in chain) <= problem.most_seconds)
    )


def _lists(problem: Problem, so_far: list[int], cost: int, least: list[int | None]) -> Iterator[tuple[int, list[int]]]:
    """Every lawful list that goes on from `so_far`, but those already as dear as the cheapest found."""
    if so_far and so_far[-1] == problem.final:
        if not problem.some_address or any(problem.nodes[i].adds for i in so_far):
            least[0] = cost
            yield cost, so_far
        return
    for n, node in enumerate(problem.nodes):
        if not _allowed(problem, so_far, n):
            continue
        dearer = cost + node.price + (300 * problem.steps[so_far[-1]][n] if so_far else 0)
        if least[0] is None or dearer < least[0]:
            yield from _lists(problem, [*so_far, n], dearer, least)
