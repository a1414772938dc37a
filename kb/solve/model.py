"""A class's rotation as a constraint model: one start for each drill of each unit, and what may not coincide.

Why each rule is as it is: kb/docs/class.md. Imports ortools, which is an extra: whoever imports this module must be
ready for ImportError.
"""

from typing import NamedTuple

from ortools.sat.python import cp_model

from kb.ask.class_.rotation import Rotation, alike
from kb.terms import ItemId

__all__ = ["Built", "Slack", "built", "total"]

Expr = cp_model.LinearExpr
Gaps = dict[int, list[cp_model.IntVar]]


class Slack(NamedTuple):
    """How much more than there is the model may take, each as a variable: for asking what is short."""

    last: int = 0
    wait: int = 0
    coaches: int = 0
    items: tuple[tuple[ItemId, int], ...] = ()


class Built(NamedTuple):
    """A model with its variables, by unit and task; `filled` is what of the gap before a task isn't waiting."""

    rotation: Rotation
    model: cp_model.CpModel
    horizon: int
    last: cp_model.IntVar
    wait: cp_model.IntVar
    coaches: cp_model.IntVar
    counts: dict[ItemId, cp_model.IntVar]
    starts: list[list[cp_model.IntVar]]
    ends: list[list[Expr]]
    modes: list[list[list[cp_model.IntVar]]]
    filled: list[list[list[Expr]]]
    busy: list[list[cp_model.IntervalVar]]
    uses: dict[ItemId, tuple[list[cp_model.IntervalVar], list[int]]]
    coached: list[cp_model.IntervalVar]
    shown: list[cp_model.IntVar]
    helpers: dict[tuple[int, int], Gaps]

    def end(self, u: int, k: int) -> Expr:
        """When the last of a unit has done a task; task -1 is the warm-up."""
        return self.ends[u][k] if k >= 0 else total([])

    def begins(self, u: int, k: int, n: int) -> Expr:
        """How much later than the first of a unit the n-th starts a task."""
        modes = self.rotation.units[u].tasks[k].modes
        return total([lit * mode.begins(n) for lit, mode in zip(self.modes[u][k], modes, strict=True)])

    def rests(self, u: int, k: int, n: int) -> Expr:
        """How much earlier than the last of a unit the n-th has done a task."""
        modes = self.rotation.units[u].tasks[k].modes if k >= 0 else ()
        return total([lit * mode.rests(n) for lit, mode in zip(self.modes[u][k], modes, strict=True)] if modes else [])

    def idle(self) -> Expr:
        """What `kb.ask.class_.rotation.idle_of` says of a plan, as an expression."""
        parts: list[Expr] = []
        for u, unit in enumerate(self.rotation.units):
            last = len(unit.tasks) - 1
            parts.append(unit.size * self.ends[u][last])
            parts += [-1 * self.rests(u, last, n) for n in range(unit.size)]
            for k, task in enumerate(unit.tasks):
                for lit, mode in zip(self.modes[u][k], task.modes, strict=True):
                    parts.append(-sum(map(mode.takes, range(unit.size))) * lit)
            shown = sum(s.ticks for s in self.rotation.showings if u in {each for each, _ in s.needs})
            parts.append(total([]) - unit.size * shown)
        return total(parts) - sum(self.rotation.units[u].tasks[k].modes[0].ticks for u, k in self.helpers)


def total(parts: list[Expr]) -> Expr:
    """The sum of expressions; of none of them 0."""
    return cp_model.LinearExpr.sum(parts)


def built(rotation: Rotation, slack: Slack = Slack()) -> Built:  # noqa: B008  # a frozen record
    """The model of a rotation."""
    found = _empty(rotation, slack)
    for u in range(len(rotation.units)):
        _unit(found, u)
    for d in range(len(rotation.showings)):
        _showing(found, d)
    for u, unit in enumerate(rotation.units):
        for k, task in enumerate(unit.tasks):
            if task.helped:
                _help(found, u, k)
    for u in range(len(rotation.units)):
        _waits(found, u)
        found.model.add_no_overlap(found.busy[u])
    for item, (intervals, demands) in found.uses.items():
        found.model.add_cumulative(intervals, demands, found.counts[item])
    found.model.add_cumulative(found.coached, [1] * len(found.coached), found.coaches)
    _chains(found)
    _order(found)
    return found


def _empty(rotation: Rotation, slack: Slack) -> Built:
    model, more = cp_model.CpModel(), dict(slack.items)
    horizon = rotation.last + slack.last
    return Built(
        rotation,
        model,
        horizon,
        last=model.new_int_var(rotation.last, horizon, "last"),
        wait=model.new_int_var(rotation.wait, rotation.wait + slack.wait, "wait"),
        coaches=model.new_int_var(rotation.coaches, rotation.coaches + slack.coaches, "coaches"),
        counts={i: model.new_int_var(count, count + more.get(i, 0), i) for i, count in rotation.have.items()},
        starts=[],
        ends=[],
        modes=[],
        filled=[[[] for _ in unit.tasks] for unit in rotation.units],
        busy=[[] for _ in rotation.units],
        uses={item: ([], []) for item in rotation.have},
        coached=[],
        shown=[],
        helpers={},
    )


def _unit(b: Built, u: int) -> None:
    """A unit's tasks one after the other, each in one of its modes."""
    model, starts = b.model, []
    ends: list[Expr] = []
    modes = []
    for k, task in enumerate(b.rotation.units[u].tasks):
        start = model.new_int_var(0, b.horizon, f"s{u}.{k}")
        chosen = [model.new_bool_var(f"m{u}.{k}.{n}") for n in range(len(task.modes))]
        model.add_exactly_one(chosen)
        end = start + total([lit * mode.length for lit, mode in zip(chosen, task.modes, strict=True)])
        model.add(end <= b.last)
        for lit, mode in zip(chosen, task.modes, strict=True):
            interval = model.new_optional_fixed_size_interval_var(start, mode.length, lit, f"i{u}.{k}")
            b.busy[u].append(interval)
            for item, count in mode.gear:
                if item in b.uses:
                    b.uses[item][0].append(interval)
                    b.uses[item][1].append(count)
            for n, (begin, _) in enumerate(task.looked_at(mode)):
                name = f"l{u}.{k}.{n}"
                if len({each.looks for each in task.modes}) == 1:  # whatever the mode
                    if lit is chosen[0]:
                        b.coached.append(model.new_fixed_size_interval_var(start + begin, task.look, name))
                else:
                    b.coached.append(model.new_optional_fixed_size_interval_var(start + begin, task.look, lit, name))
        model.add(start >= (ends[-1] if ends else total([])))
        starts.append(start)
        ends.append(end)
        modes.append(chosen)
    b.starts.append(starts)
    b.ends.append(ends)
    b.modes.append(modes)


def _showing(b: Built, d: int) -> None:
    """A drill shown once: a coach and all who need it are there, in a gap before they do it."""
    showing, model = b.rotation.showings[d], b.model
    start = model.new_int_var(0, b.horizon, f"t{d}")
    end = start + showing.ticks
    interval = model.new_fixed_size_interval_var(start, showing.ticks, f"t{d}")
    b.shown.append(start)
    b.coached.append(interval)
    fresh = []
    for u, before in showing.needs:
        b.busy[u].append(interval)
        gaps = [model.new_bool_var(f"t{d}.{u}.{k}") for k in range(before + 1)]
        model.add_exactly_one(gaps)
        for k, lit in enumerate(gaps):
            model.add(start >= b.end(u, k - 1)).only_enforce_if(lit)
            model.add(end <= b.starts[u][k]).only_enforce_if(lit)
            b.filled[u][k].append(lit * showing.ticks)
        soon = model.new_bool_var(f"f{d}.{u}")
        model.add(b.starts[u][before] <= end + b.rotation.fresh).only_enforce_if(soon)
        fresh.append(soon)
    # shown just before those who do it first, not at the start of the evening
    model.add_bool_or(fresh)


def _help(b: Built, u: int, k: int) -> None:
    """Somebody of another unit is the partner, in a gap before a task of their own."""
    model, units = b.model, b.rotation.units
    start, end, length = b.starts[u][k], b.ends[u][k], units[u].tasks[k].modes[0].length
    chosen: Gaps = {}
    for h, unit in enumerate(units):
        if h == u:
            continue
        chosen[h] = [model.new_bool_var(f"h{u}.{k}.{h}.{n}") for n in range(len(unit.tasks))]
        for n, lit in enumerate(chosen[h]):
            model.add(start >= b.end(h, n - 1)).only_enforce_if(lit)
            model.add(end <= b.starts[h][n]).only_enforce_if(lit)
            b.busy[h].append(model.new_optional_fixed_size_interval_var(start, length, lit, f"h{u}.{k}.{h}.{n}"))
            if unit.size == 1:
                b.filled[h][n].append(lit * length)
    model.add_exactly_one([lit for literals in chosen.values() for lit in literals])
    b.helpers[u, k] = chosen


def _waits(b: Built, u: int) -> None:
    """Between two drills nobody waits too long: of those who take turns none, first or last."""
    unit = b.rotation.units[u]
    for k in range(len(unit.tasks)):
        gap = b.starts[u][k] - b.end(u, k - 1) - total(b.filled[u][k])
        b.model.add(gap <= b.wait)
        for n in range(unit.size if unit.size > 1 else 0):
            b.model.add(gap + b.rests(u, k - 1, n) + b.begins(u, k, n) <= b.wait)


def _chains(b: Built) -> None:
    """No more chains run at once than the coaches can run; one runs from its first start to its last end."""
    rotation, model = b.rotation, b.model
    if len(rotation.led) <= rotation.at_once:
        return
    spans = []
    for group in rotation.led:
        first = model.new_int_var(0, b.horizon, f"first{group}")
        last = model.new_int_var(0, b.horizon, f"last{group}")
        length = model.new_int_var(0, b.horizon, f"length{group}")
        for u, unit in enumerate(rotation.units):
            if unit.group == group:
                model.add(first <= b.starts[u][0])
                model.add(last >= b.ends[u][-1])
        spans.append(model.new_interval_var(first, length, last, f"chain{group}"))
    model.add_cumulative(spans, [1] * len(spans), b.coaches * (rotation.at_once // rotation.coaches))


def _order(b: Built) -> None:
    """Of units that could be exchanged, the one listed first starts first.

    Where no task has a choice of modes that holds of every task: sorting the starts of each task among such units
    keeps every rule, and every minute waited.
    """
    units = b.rotation.units
    for u in range(1, len(units)):
        if alike(b.rotation, u - 1, u):
            every = all(len(task.modes) == 1 for task in units[u].tasks)
            for k in range(len(units[u].tasks) if every else 1):
                b.model.add(b.starts[u - 1][k] <= b.starts[u][k])
