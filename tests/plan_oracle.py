"""The fewest sessions of a plan by a constraint solver, from the laws of kb/docs/plan.md, and small plans to ask it."""

from collections.abc import Sequence
from itertools import pairwise, product
from random import Random

from handmade import drill
from ortools.sat.python import cp_model
from plan_rules import best_gap_days

from kb.ask.plan.forms import Form
from kb.ask.plan.past import Past
from kb.ask.plan.weeks import Weeks
from kb.dials import Dials
from kb.terms import Catch, Load, Speed, Stage

__all__ = ["fewest", "random_forms", "random_past"]


def random_forms(seed: int) -> tuple[list[Form], Weeks]:
    """Two to five forms, some of one drill at several loads, and weeks that bind."""
    rng = Random(seed)
    forms: list[Form] = []
    drill_n, target = 0, rng.randint(2, 5)
    while len(forms) < target:
        loads = sorted(rng.sample([Load.STICK, Load.LIGHT, Load.WORKING], rng.choice([1, 1, 1, 2, 3])))
        whole = rng.random() < 0.3
        for at, load in enumerate(loads):
            check = rng.randint(1, 3)
            work = check + rng.randint(0, 4)
            n = len(forms)
            forms.append(
                Form(
                    n=n,
                    drill_n=drill_n,
                    drill=drill(f"drill-{drill_n}"),
                    load=load,
                    dials=Dials(Stage.SEGMENT, 0, 1, 0, Speed.FULL, load, Catch.NONE, helped=False),
                    kind="fast",
                    exposures=rng.randint(1, 4) if len(loads) == 1 else 2,
                    lighter=n - 1 if at else None,
                    heavier=n + 1 if at < len(loads) - 1 else None,
                    new=work + rng.randint(0, 1),
                    work=work,
                    check=check,
                    is_lift=False,
                    whole=whole,
                    needs=(),
                )
            )
        drill_n += 1
    forms = [form._replace(is_lift=form.drill_n == drill_n - 1) for form in forms]
    longest = max(form.new for form in forms)
    room = longest + rng.randint(0, 8)
    lightest = max([form.check for form in forms if form.load is not Load.WORKING], default=0)
    return forms, Weeks(rng.randint(1, 3), 5, room, max(room // 2, lightest))


def random_past(forms: Sequence[Form], seed: int) -> tuple[list[Past], int]:
    """Where those forms might stand after some sessions, and how many there were; the last is not held."""
    rng = Random(seed)
    begun = rng.randint(1, 6)
    past: list[Past] = []
    for form in forms:
        met = 0 if rng.random() < 0.4 else rng.randint(0, form.exposures)
        if form.lighter is not None and past[form.lighter].met < forms[form.lighter].exposures:
            met = 0
        if form is forms[-1]:
            met = min(met, form.exposures - 1)
        tried, last = met + (rng.random() < 0.3), rng.randint(max(begun - 2, 1), begun)
        gap = rng.randint(1, 3) if met > 1 else 0
        past.append(Past(met, last, gap, tried, bool(met) and rng.random() < 0.2) if tried else Past())
    return past, begun


def _best(left: int, per_week: int) -> int:
    return max(1, int(best_gap_days(left * 7 / per_week) * per_week / 7 + 0.5))


class _Model:
    """Whether all can be held by session `days`, as a model."""

    def __init__(self, forms: Sequence[Form], past: Sequence[Past], weeks: Weeks, begun: int, days: int) -> None:
        self.forms, self.past, self.weeks, self.begun, self.days = forms, past, weeks, begun, days
        self.model = cp_model.CpModel()
        self.light = [n for n in range(begun + 1, days + 1) if weeks.per_week > 1 and -(-n // weeks.per_week) % 4 == 0]
        self.at: list[list[cp_model.IntVar]] = []
        self.new: dict[int, list[cp_model.IntVar]] = {}
        self.load: list[list[tuple[int, cp_model.IntVar]]] = [[] for _ in range(days + 1)]
        self.possible = True
        for form, stands in zip(forms, past, strict=True):
            self._days(form, stands)
        for form, stands in zip(forms, past, strict=True):
            self._gaps(form, stands)
        self._sessions()
        self._orders()

    def _days(self, form: Form, stands: Past) -> None:
        at: list[cp_model.IntVar] = []
        for exposure in range(stands.met + 1, form.exposures + 1):
            there = [self.model.new_bool_var("") for _ in range(self.days + 1)]
            when = self.model.new_int_var(self.begun + 1, self.days, "")
            self.model.add_exactly_one(there[self.begun + 1 :])
            self.model.add(when == sum(n * there[n] for n in range(self.days + 1)))
            for there_not in there[: self.begun + 1]:
                self.model.add(there_not == 0)
            full = form.work if exposure < form.exposures else form.check
            for n in range(self.begun + 1, self.days + 1):
                self.load[n].append((form.new if exposure == 1 else full, there[n]))
            for n in self.light:
                if (exposure == 1 and not stands.tried) or form.load is Load.WORKING:
                    self.model.add(there[n] == 0)
            if exposure == 1:
                self.new[form.n] = there
            at.append(when)
        self.at.append(at)

    def _lawful(self, a: int, b: int, c: int) -> bool:
        gap = b - a
        return c - b > gap or (c - b == gap and gap >= _best(self.days - b, self.weeks.per_week))

    def _gaps(self, form: Form, stands: Past) -> None:
        at = self.at[form.n]
        for before, after in pairwise(at):
            self.model.add(after > before)
        if not at:
            return
        known = bool(stands.met) and not stands.waits
        if known:
            self.model.add(at[0] > stands.last)
        fixed: list[list[int]] = []
        if known and stands.gap:
            fixed.append([stands.last - stands.gap])
        if known:
            fixed.append([stands.last])
        span = list(range(self.begun + 1, self.days + 1))
        points = [*fixed, *(span for _ in at)]
        variables = [*(None for _ in fixed), *at]
        for first in range(len(points) - 2):
            triples = [
                each
                for each in product(*points[first : first + 3])
                if each[0] < each[1] < each[2] and self._lawful(*each)
            ]
            asked = [n for n in range(3) if variables[first + n] is not None]
            rows = [[each[n] for n in asked] for each in triples]
            if not rows:
                self.possible = False
                return
            self.model.add_allowed_assignments([variables[first + n] for n in asked], rows)

    def _sessions(self) -> None:
        for n in range(self.begun + 1, self.days + 1):
            room = self.weeks.light_room if n in self.light else self.weeks.room
            self.model.add(sum(minutes * there for minutes, there in self.load[n]) <= room)
            self.model.add(sum(there[n] for there in self.new.values()) <= 2)
            wholes = [form.n for form in self.forms if form.whole and form.lighter is None and form.n in self.new]
            self.model.add(sum(self.new[each][n] for each in wholes) <= 1)

    def _orders(self) -> None:
        for first in (True, False):
            same = [form.n for form in self.forms if (form.lighter is None) == first and form.n in self.new]
            for one, other in pairwise(same):
                self.model.add(self.at[one][0] <= self.at[other][0])
        for form in self.forms:
            lighter = form.lighter
            if lighter is not None and form.n in self.new and self.at[lighter]:
                self.model.add(self.at[form.n][0] > self.at[lighter][-1])
            if self.at[form.n]:
                self.model.add(self.at[form.n][-1] <= self.at[-1][-1])

    def feasible(self) -> bool:
        """Whether there is a way."""
        if not self.possible:
            return False
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        status = solver.solve(self.model)
        assert status in (cp_model.OPTIMAL, cp_model.FEASIBLE, cp_model.INFEASIBLE)
        return status != cp_model.INFEASIBLE


def fewest(forms: Sequence[Form], past: Sequence[Past], weeks: Weeks, *, begun: int, most: int) -> int | None:
    """The number of the first session by which everything can be held; None if it isn't by session `most`."""
    days = range(begun + 1, most + 1)
    return next((day for day in days if _Model(forms, past, weeks, begun, day).feasible()), None)
