"""The laws of kb/docs/plan.md, read again: what is wrong with a plan, judged from its JSON and the drills alone.

Nothing of kb/ask/plan is used, so that program and tests can disagree. What was done before is read here a second
time, too.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from math import ceil, log
from typing import Any

from reading import Caps, World, caps, check_s, stand, work_s

from kb.terms import Catch, Drill, DrillId, ItemId, Load, Speed, Stage

__all__ = ["DoneRow", "Wanted", "best_gap_days", "broken_plan_rules", "wanted"]

Node = tuple[DrillId, Load]
DoneRow = tuple[int, DrillId, Load | None, bool]

TIMES = {"prepare": 2, "held": 2, "slow": 3, "fast": 3, "whole": 4}


def best_gap_days(delay: float) -> float:
    """30 % of a week, 7.5 % of a year, in between straight in the logarithm of the delay. 7.01 Cepeda 2008."""
    if delay <= 7:
        return 0.3 * delay
    if delay >= 365:
        return 0.075 * delay
    return (0.3 - 0.225 * log(delay / 7) / log(365 / 7)) * delay


def _best_gap(left: int, per_week: float) -> int:
    days = best_gap_days(left * 7 / per_week)
    sessions = days * per_week / 7
    return max(1, int(sessions) + (sessions - int(sessions) >= 0.5))


@dataclass
class Wanted:
    """A drill at one load, as the docs ask for it, and where it stands as the sessions go by."""

    drill: DrillId
    load: Load
    times: int
    whole: bool
    first: bool
    lighter: "Wanted | None" = None
    met: int = 0
    last: int = 0
    gaps: list[int] = field(default_factory=list)
    held_in: int | None = None
    tried: bool = False
    broken_off: bool = False

    @property
    def held(self) -> bool:
        """Whether it was met often enough."""
        return self.met >= self.times


def _kind(world: World, have: frozenset[ItemId], node: Node) -> str:
    drill = world.drills[node[0]]
    capped = caps(world, drill, have)
    assert capped is not None
    here = stand(world, drill, node[1], capped)
    if drill.stage is Stage.PREPARE:
        return "prepare"
    if drill.stage is Stage.WHOLE or (here.speed is Speed.FULL and here.catch is Catch.FULL):
        return "whole"
    return {Speed.HELD: "held", Speed.FULL: "fast"}.get(here.speed, "slow")


def wanted(world: World, have: frozenset[ItemId], path: Sequence[Node], *, known: bool = False) -> list[Wanted]:
    """All that a path's plan must hold, in order: unloaded before loaded, each weight so many times.

    What is `known` once, but for what puts most together and working weight.
    """
    found: list[Wanted] = []
    for drill in dict.fromkeys(drill for drill, _ in path):
        loads = sorted({load for each, load in path if each == drill})
        if loads[0] >= Load.LIGHT and world.drills[drill].load[0] <= Load.STICK:
            loads.insert(0, Load.STICK)
        kind = _kind(world, have, next(node for node in path if node[0] == drill))
        before = None
        for load in loads:
            times = TIMES[kind] if len(loads) == 1 else 2
            if known:
                alone = len(loads) == 1
                times = 2 if load is Load.WORKING or (kind == "whole" and alone) else 1
            before = Wanted(drill, load, times, kind == "whole", before is None, before)
            found.append(before)
    return found


def _remember(all_wanted: list[Wanted], done: Sequence[DoneRow]) -> None:
    """Go through what was done: met counts, not met takes one back and the gaps begin anew."""
    for session, drill, load, met in sorted(done, key=lambda row: (row[0], row[1], row[2] or Load.NONE)):
        own = [each for each in all_wanted if each.drill == drill]
        if not own:
            continue
        if load is None:
            here = next((each for each in own if not each.held), own[-1])
        else:
            here = [each for each in own if each.load <= load][-1] if own[0].load <= load else own[0]
        here.tried = True
        if not met:
            here.met, here.gaps, here.last = max(min(here.met, here.times) - 1, 0), [], session
            continue
        if here.met:
            here.gaps.append(session - here.last)
        else:
            here.gaps = []
        here.met, here.last = here.met + 1, session
        for each in own:
            if each.load < here.load and not each.held:
                each.met, each.last = each.times, session


def _minutes(world: World, each: Wanted, exposure: int, *, known: bool = False) -> int:
    """Whole minutes: the full dose until the last exposure expected, then one round; what is known isn't shown."""
    drill = world.drills[each.drill]
    more = 0 if each.first else {Load.LIGHT: 60, Load.WORKING: 120}.get(each.load, 0)
    if known and (exposure > 1 or not each.tried):
        return ceil(((work_s(drill) if exposure < each.times else check_s(drill)) + more) / 60)
    if known:
        return ceil((work_s(drill) + more) / 60)
    if exposure == 1:
        return ceil((work_s(drill) + more + (drill.teach_s if each.first else 0)) / 60)
    return ceil(((work_s(drill) if exposure < each.times else check_s(drill)) + more) / 60)


def broken_plan_rules(
    answer: Mapping[str, Any],
    world: World,
    have: frozenset[ItemId],
    path: Sequence[Node],
    done: Sequence[DoneRow] = (),
    *,
    new: int = 2,
    home: frozenset[ItemId] = frozenset(),
    known: bool = False,
) -> list[str]:
    """What is wrong with a plan, in words; nothing if it keeps every law.

    `new` drills a session were allowed; `home` is what is at home, for sessions there; `known` says that the lift was
    done before. What comes after the lift is held, towards a day, is another's to judge.
    """
    return list(_Judge(answer, world, have, path, done, 6 if known else new, home, known=known).judged())


class _Judge:
    def __init__(
        self,
        answer: Mapping[str, Any],
        world: World,
        have: frozenset[ItemId],
        path: Sequence[Node],
        done: Sequence[DoneRow],
        new: int,
        home: frozenset[ItemId],
        *,
        known: bool,
    ) -> None:
        self.answer, self.world, self.known = answer, world, known
        self.most_new, self.home, self.have = new, home, have
        self.wanted = wanted(world, have, path, known=known)
        _remember(self.wanted, done)
        met = {each.drill for each in self.wanted if each.met}
        for each in self.wanted:
            each.broken_off = any(there and not met & set(there) for there in self._groups(each.drill))
        self.turns: list[int] = answer["turns"]
        self.per_week = sum(self.turns) / len(self.turns) + answer["home_days"]
        self.away: list[int] = answer["away"]
        self.begun = max((row[0] for row in done), default=0)
        self.last_day: int = answer["held_in"]
        self.before: list[list[tuple[str, str]]] = []

    def judged(self) -> Iterator[str]:
        """Every law, session by session, then the end."""
        if self.wanted[-1].held:
            if self.answer["sessions"]:
                yield "the lift is held, and yet there are sessions"
            return
        for n, session in enumerate(self.answer["sessions"][: self.last_day - self.begun], self.begun + 1):
            for wrong in self._session(n, session):
                yield f"session {n}: {wrong}"
        yield from self._end()

    def _session(self, n: int, session: Mapping[str, Any]) -> Iterator[str]:
        # sessions are in the weeks that aren't away; a week away is the light one, and the count begins anew
        counted = [
            (week, within, self.turns[(week - 1) % len(self.turns)])
            for week in range(1, n + len(self.away) + 1)
            if week not in self.away
            for within in range(self.turns[(week - 1) % len(self.turns)] + self.answer["home_days"])
        ]
        week, within, coached = counted[n - 1]
        in_it = coached + self.answer["home_days"]
        since = week - max((each for each in self.away if each < week), default=0)
        # once a week with a coach is light enough
        light = since % 4 == 0 and week + 1 not in self.away and sum(self.turns) > len(self.turns)
        # with a coach: evenly in the week, the first of it among them
        with_coach = [ceil(at * in_it / coached) for at in range(coached)]
        if session["home"] != (within not in with_coach):
            yield "at home or not is wrong"
        if (session["n"], session["week"], session["light"]) != (n, week, light):
            yield "its number, week or light week is wrong"
        if session["place"] != (light and within == with_coach[-1]):
            yield "a new placement ends the light week, and stands nowhere else"
        if not session["drills"] and not session["home"]:
            yield "nothing in it"
        if session["home"]:
            yield from self._alone(session)
        yield from self._time(session, light=light)
        here = {(each["id"], each["load"]) for each in session["drills"]}
        if len(here) != len(session["drills"]):
            yield "a drill twice"
        if len({each["id"] for each in session["drills"]}) != len(session["drills"]):
            yield "one drill at two weights"
        yield from self._new(session, light=light)
        met_today: set[str] = set()
        for each in session["drills"]:
            for wrong in self._drill(n, each, met_today):
                yield f"{each['id']} {each['load']}: {wrong}"
            met_today.add(each["id"])
        yield from self._mixed(session)
        for each in session["drills"]:
            self._met(n, each)

    def _alone(self, session: Mapping[str, Any]) -> Iterator[str]:
        """At home: nothing new, nothing heavy, and only what can be done there as it is."""
        for each in session["drills"]:
            here = self._of(each)
            drill = self.world.drills[here.drill]
            capped = caps(self.world, drill, self.home)
            if not here.tried:
                yield f"{here.drill} is new at home"
            if here.load is Load.WORKING:
                yield f"{here.drill} at working weight, alone"
            if capped is None or capped[1] < here.load or self._less(drill, capped):
                yield f"{here.drill} can't be done at home"
            if here is self.wanted[-1] and here.met + 1 == here.times:
                yield "the lift is held for the first time alone"

    def _less(self, drill: Drill, at_home: Caps) -> bool:
        """Whether what is at home caps a dial that the room doesn't."""
        there = caps(self.world, drill, self.have)
        assert there is not None
        return min(drill.speed, at_home[0]) < min(drill.speed, there[0]) or min(drill.catch, at_home[2]) < min(
            drill.catch, there[2]
        )

    def _of(self, each: Mapping[str, Any]) -> Wanted:
        return next(
            found for found in self.wanted if found.drill == each["id"] and each["load"] in (None, found.load.word)
        )

    def _time(self, session: Mapping[str, Any], *, light: bool) -> Iterator[str]:
        minutes: int = self.answer["minutes"]
        warm_up = min(max(minutes // 4, 5), 10)
        total = sum(each["minutes"] for each in session["drills"])
        if session["warm_up"] != warm_up:
            yield "the warm-up is a quarter, from 5 to 10 min"
        if session["minutes"] != warm_up + total or session["minutes"] > minutes:
            yield f"{session['minutes']} min are not its parts, or more than there are"
        checks = [
            ceil((check_s(self.world.drills[each.drill]) + (60 if not each.first else 0)) / 60)
            for each in self.wanted
            if each.load is not Load.WORKING
        ]
        if light and total > max([(minutes - warm_up) // 2, *checks]):
            yield "the light week isn't light"
        for each in session["drills"]:
            if each["minutes"] != _minutes(self.world, self._of(each), each["exposure"], known=self.known):
                yield f"{each['id']} doesn't take {each['minutes']} min"

    def _new(self, session: Mapping[str, Any], *, light: bool) -> Iterator[str]:
        new = [self._of(each) for each in session["drills"] if each["exposure"] == 1]
        never = [not self._of(each).tried for each in session["drills"]]
        if [it and not self.known for it in never] != [each["new"] for each in session["drills"]]:
            yield "new is what was never tried"
        if len(new) > self.most_new:
            yield "more new than may be"
        if not self.known and sum(each.whole and each.first for each in new) > 1:
            yield "two new that put most together"
        if light and any(never):
            yield "new in a light week"
        if light and any(each["load"] == "working" for each in session["drills"]):
            yield "working weight in a light week"
        waiting = [each for each in self.wanted if each.first and not each.met]
        begun = [each for each in new if each.first]
        if waiting[: len(begun)] != begun:
            yield "not new in the path's order"
        heavier = [each for each in self.wanted if not each.first and not each.met]
        loaded = [each for each in self.wanted if not each.first and each in new]
        if heavier[: len(loaded)] != loaded:
            yield "not loaded in the path's order"

    def _drill(self, n: int, each: Mapping[str, Any], met_today: set[str]) -> Iterator[str]:
        here, drill = self._of(each), self.world.drills[each["id"]]
        if each["exposure"] != here.met + 1 or each["of"] != here.times:
            yield f"exposure {each['exposure']} of {each['of']}, expected {here.met + 1} of {here.times}"
        kind = "keep" if here.held else "check" if here.met + 1 == here.times else "work"
        if not here.tried and not self.known:
            kind = "new"
        if here.tried and not here.met and self.known:
            kind = "work"
        if each["as"] != kind:
            yield f"as {each['as']}, expected {kind}"
        met = {found.drill for found in self.wanted if found.met} | met_today
        for there in self._groups(drill.id):
            if there and not met & set(there):
                yield f"before {' or '.join(there)}"
        lighter = here.lighter
        if lighter is not None and not (lighter.held and lighter.last < n):
            yield "loaded before it was held lighter in an earlier session"
        yield from self._gap(n, here)

    def _groups(self, drill_id: DrillId) -> list[list[DrillId]]:
        """Of each group what stands earlier in the path; where nothing does, it is held."""
        earlier = [found.drill for found in self.wanted]
        earlier = earlier[: earlier.index(drill_id)]
        return [[member for member in group if member in earlier] for group in self.world.drills[drill_id].groups]

    def _gap(self, n: int, here: Wanted) -> Iterator[str]:
        if not here.met or not here.last:
            return
        gap = n - here.last
        if not here.gaps or here.broken_off:
            if gap < 1:
                yield "twice in a session"
            return
        before = here.gaps[-1]
        if gap < before:
            yield f"the gap shrinks from {before} to {gap}"
        if gap <= before and before < _best_gap(self.last_day - here.last, self.per_week):
            yield f"the gap stays {gap}, short of the best for the time left"

    def _mixed(self, session: Mapping[str, Any]) -> Iterator[str]:
        """What is known comes in another order than in the last session in which two or more of it came."""
        lift = self.world.lift.drill
        known = [
            (each["id"], str(each["load"]))
            for each in session["drills"]
            if each["exposure"] > 1 and each["id"] != lift and each["load"] not in (None, "working")
        ]
        for before in reversed(self.before):
            shared = [each for each in known if each in before]
            if len(shared) > 1:
                if shared == [each for each in before if each in known]:
                    yield "known drills in the order of the last session that they shared"
                break
        self.before.append(known)

    def _met(self, n: int, each: Mapping[str, Any]) -> None:
        here = self._of(each)
        if here.broken_off:
            here.gaps, here.broken_off = [], False
        elif here.met:
            here.gaps.append(n - here.last)
        here.met, here.last, here.tried = here.met + 1, n, True
        if here.met == here.times:
            here.held_in = n

    def _end(self) -> Iterator[str]:
        for each in self.wanted:
            if not each.held:
                yield f"{each.drill} {each.load.word} isn't held in the end"
        lift = self.wanted[-1]
        if lift.held_in != self.last_day:
            yield "the lift isn't held on the last day"
        sessions = self.answer["sessions"][: self.last_day - self.begun]
        last = sessions[-1]["drills"][-1]
        if (last["id"], last["load"]) != (lift.drill, lift.load.word):
            yield "the last day doesn't end with the lift"
        if not 1 <= self.answer["lower_bound"] <= len(sessions):
            yield "fewer sessions than the bound allows"
        if self.answer["lower_bound"] != max(self.answer["lower_bound_by"].values()):
            yield "the bound isn't the greatest of its parts"
