"""A hall while a class is on: who is busy until when, which gear and coaches are taken. For building a plan forward."""

from itertools import chain

from kb.ask.class_.rotation import Mode, Plan, Rotation

__all__ = ["Hall"]


class Hall:
    """The state of a class at one tick and what has been settled so far; only the rules' own moves change it."""

    def __init__(self, rotation: Rotation) -> None:
        count = len(rotation.units)
        self.rotation = rotation
        self.free_at = [0] * count
        self.ended = [0] * count  # when the last drill ended, and how much earlier each of the unit had done it
        self.rested = [(0,) * unit.size for unit in rotation.units]
        self.filled = [0] * count  # shown or helping since then
        self.starts: list[list[int]] = [[] for _ in range(count)]
        self.modes: list[list[int]] = [[] for _ in range(count)]
        self.shown: list[int | None] = [None] * len(rotation.showings)
        self.helpers: dict[tuple[int, int], int] = {}
        span = rotation.last + 2 + max(mode.length for u in rotation.units for t in u.tasks for mode in t.modes)
        self.taken = {item: [0] * span for item in rotation.have}
        self.coaching = [0] * span

    @property
    def over(self) -> bool:
        """Whether every unit has begun its last drill."""
        return all(
            len(starts) == len(unit.tasks) for starts, unit in zip(self.starts, self.rotation.units, strict=True)
        )

    def ready(self, u: int, now: int) -> bool:
        """Whether a unit is free and has a drill left."""
        return self.free_at[u] <= now and len(self.starts[u]) < len(self.rotation.units[u].tasks)

    def late(self, now: int) -> set[int]:
        """The units that have waited longer than anyone may."""
        return {
            u
            for u in range(len(self.rotation.units))
            if self.ready(u, now) and now - self.ended[u] - self.filled[u] + max(self.rested[u]) > self.rotation.wait
        }

    def waited_longest(self) -> set[int]:
        """The units, one at least, that ended latest for what they had to do."""
        over = {
            u: self.ended[u] - sum(unit.tasks[k].modes[n].takes(0) for k, n in enumerate(self.modes[u]))
            for u, unit in enumerate(self.rotation.units)
        }
        return {u for u, ticks in over.items() if ticks == max(over.values())}

    def next(self, u: int, now: int, *, thrift: bool) -> None:
        """Let a unit begin its next drill, or have it shown, if all that needs is free; else it waits."""
        k = len(self.starts[u])
        for d, showing in enumerate(self.rotation.showings):
            if self.shown[d] is None and (u, k) in showing.needs:
                self._show(d, now)
                return
        if self._called(u, now) or not self._may_run(u, now):
            return
        modes = self.rotation.units[u].tasks[k].modes
        order = sorted(range(len(modes)), key=lambda n: self._wish(modes[n], thrift))
        for n in order:
            if self._begin(u, now, n):
                return

    @staticmethod
    def _wish(mode: Mode, thrift: bool) -> tuple[int, ...]:
        gear = sum(count for _, count in mode.gear)
        return (mode.light, gear, mode.length) if thrift else (mode.light, mode.length, gear)

    def _show(self, d: int, now: int) -> None:
        showing = self.rotation.showings[d]
        span = range(now, now + showing.ticks)
        units = {unit for unit, _ in showing.needs}
        all_free = all(self.free_at[u] <= now for u in units)
        if not all_free or not self._coach(span):
            return
        self.shown[d] = now
        for u in units:
            self.free_at[u] = now + showing.ticks
            self.filled[u] += showing.ticks
        for tick in span:
            self.coaching[tick] += 1

    def _called(self, u: int, now: int) -> bool:
        """Whether others who are free wait for this unit, to be shown a drill together."""
        for d, showing in enumerate(self.rotation.showings):
            if self.shown[d] is None and any(unit == u for unit, _ in showing.needs):
                for unit, k in showing.needs:
                    if unit != u and len(self.starts[unit]) == k and self.free_at[unit] <= now:
                        return True
        return False

    def _may_run(self, u: int, now: int) -> bool:
        """Whether a coach can take on the unit's chain, if nobody has begun it."""
        running = set()
        for v, unit in enumerate(self.rotation.units):
            going = len(self.starts[v]) < len(unit.tasks) or self.free_at[v] > now
            if self.starts[v] and going and unit.group not in self.rotation.by_themselves:
                running.add(unit.group)
        group = self.rotation.units[u].group
        return group in running or group in self.rotation.by_themselves or len(running) < self.rotation.at_once

    def _coach(self, span: range) -> bool:
        return all(tick < len(self.coaching) and self.coaching[tick] < self.rotation.coaches for tick in span)

    def _begin(self, u: int, now: int, n: int) -> bool:
        rotation, k = self.rotation, len(self.starts[u])
        unit = rotation.units[u]
        task, mode = unit.tasks[k], unit.tasks[k].modes[n]
        span = range(now, now + mode.length)
        by_turns = max(rested + mode.begins(at) for at, rested in enumerate(self.rested[u])) if unit.size > 1 else 0
        waited = now - self.ended[u] - self.filled[u] + by_turns
        looks = [range(now + begin, now + end) for begin, end in task.looked_at(mode)]
        if now + mode.length > rotation.last or waited > rotation.wait or not all(map(self._coach, looks)):
            return False
        gear = [(self.taken[item], count, rotation.have[item]) for item, count in mode.gear if item in self.taken]
        if any(row[tick] + count > most for row, count, most in gear for tick in span):
            return False
        if task.helped and not self._help(u, k, now, mode.length):
            return False
        for row, count, _ in gear:
            for tick in span:
                row[tick] += count
        for tick in chain.from_iterable(looks):
            self.coaching[tick] += 1
        self.starts[u].append(now)
        self.modes[u].append(n)
        self.free_at[u] = self.ended[u] = now + mode.length
        self.rested[u], self.filled[u] = tuple(map(mode.rests, range(unit.size))), 0
        return True

    def _help(self, u: int, k: int, now: int, length: int) -> bool:
        """Find a partner who is free: one alone before one of two, whose other half would wait."""
        units = self.rotation.units
        there = [h for h in range(len(units)) if h != u and self.ready(h, now)]
        if not there:
            return False
        h = min(there, key=lambda each: (units[each].size, each))
        self.helpers[u, k] = h
        self.free_at[h] = now + length
        if units[h].size == 1:
            self.filled[h] += length
        return True

    def plan(self) -> Plan | None:
        """What was settled, if every drill was shown just before somebody did it."""
        shown: list[int] = []
        for showing, start in zip(self.rotation.showings, self.shown, strict=True):
            if start is None:
                return None
            end = start + showing.ticks
            if min(self.starts[u][k] for u, k in showing.needs) > end + self.rotation.fresh:
                return None
            shown.append(start)
        return Plan(tuple(map(tuple, self.starts)), tuple(map(tuple, self.modes)), tuple(shown), self.helpers)
