"""A class file: who comes, with what fault or what they hold already, and what is in the hall. YAML, read strictly.

Whatever is wrong with it is said in one sentence that names the file, the line and the field.
"""

import sqlite3
from collections.abc import Mapping
from pathlib import Path
from typing import Any, NamedTuple

from pydantic import ValidationError

from kb.ask import read
from kb.ask.class_.doing import PARTNER
from kb.ask.class_.people import LONGER_WAIT_S, MOST_WAIT_S, PLENTY, Class, Lifter
from kb.ask.class_.turned import without_turned
from kb.ask.names import resolve
from kb.errors import BadInput
from kb.intake.class_model import ENOUGH, ClassModel, LifterModel
from kb.kit import RACK
from kb.make.front_matter import take_apart
from kb.make.sentences import place, problems_of
from kb.terms import DrillId, FaultId, ItemId, LiftId
from kb.words import fold

__all__ = ["DEMO", "LARGEST", "class_file", "demo_class"]

DEMO = Path(__file__).parents[1] / "demo" / "kestrel-road.yaml"
"""The class that comes with the program."""

LARGEST = 100_000
"""Bytes of a file at most."""

MOST_OF_ONE = 500
"""More of one thing than any hall has."""

NOBODY = (
    "each of them asks someone qualified first, a doctor or a physiotherapist, a child a coach trained to teach"
    " children; who is free of it and cleared has `cleared: her doctor`, and is planned for"
)
"""Where all who come must ask first. Common practice, no source."""

JERK = LiftId("jerk")
"""The lift that may begin at a rack."""


class _File(NamedTuple):
    """Where things stand in a file."""

    name: str
    lines: Mapping[str, int]

    def at(self, path: str) -> str:
        """A place as people say it."""
        field = next((part for part in reversed(path.split(".")) if part and not part.isdigit()), "")
        line = max(self.lines.get(place(tuple(path.split(".")), self.lines), 2) - 1, 1)
        return f"in {self.name}, line {line}" + (f", `{field}`" if field else "")

    def wrong(self, path: str, message: str, nearest: tuple[str, ...] = ()) -> BadInput:
        """What is wrong there."""
        return BadInput(f"{self.at(path)}: {message}", nearest=nearest)

    def resolved(self, db: sqlite3.Connection, kind: str, text: str, path: str) -> str:
        """The id of the entry meant there."""
        try:
            return resolve(db, kind, text)
        except BadInput as unknown:
            raise self.wrong(path, str(unknown), unknown.nearest) from None


def class_file(path: Path, db: sqlite3.Connection) -> Class:
    """The class in a file, its names as ids of the library.

    Raises BadInput for a file that can't be read and for the first thing that is wrong in it.
    """
    file, model = _read(path)
    class_lift, gear = LiftId(file.resolved(db, "lift", model.lift, "lift")), _gear(file, db, model)
    if 60 * model.warm_up_minutes >= 60 * model.minutes:
        raise file.wrong("warm_up_minutes", f"the warm-up takes all of the {model.minutes} minutes")
    names: set[str] = set()
    lifters = []
    for n, each in enumerate(model.lifters):
        if fold(each.name) in names:
            raise file.wrong(f"lifters.{n}.name", f"there are two lifters called {each.name}: give one another name")
        names.add(fold(each.name))
        lifters.append(_lifter(file, db, each, f"lifters.{n}", class_lift, model.bar_kg))
        if each.bar == "racked" and not gear.get(RACK):
            raise file.wrong(f"lifters.{n}.bar", "there is no rack: say how many under `gear`")
    asked = Class(
        model.name,
        tuple(lifters),
        gear,
        model.minutes,
        model.coaches,
        60 * model.warm_up_minutes,
        MOST_WAIT_S if model.most_wait_s is None else model.most_wait_s,
        model.bar_kg,
        _drills(file, db, model.known, "known"),
        _goal(file, db, model.to, "to", class_lift) if model.to else None,
        model.new,
        _today(file, db, model, class_lift),
        helpers=model.helpers,
        longer_s=LONGER_WAIT_S if model.most_wait_s is None else 0,
    )
    found = without_turned(asked)
    if not found.lifters:
        raise file.wrong("lifters", f"nobody is left to plan for; {NOBODY}")
    return found


def demo_class(db: sqlite3.Connection) -> Class | None:
    """The class that comes with the program; None with a library that doesn't hold what it asks for."""
    try:
        return class_file(DEMO, db)
    except BadInput:
        return None


def _read(path: Path) -> tuple[_File, ClassModel]:
    try:
        with path.open("rb") as opened:
            data = opened.read(LARGEST + 1)
    except (OSError, ValueError) as error:
        raise BadInput(
            f"the class file {path} can't be read: {(getattr(error, 'strerror', None) or str(error)).lower()}"
        ) from None
    if len(data) > LARGEST:
        raise BadInput(f"the class file {path} is too large for a class ({LARGEST // 1000} kB at most)")
    # between two lines of dashes, so that what reads entries reads this; its lines are counted from those
    taken = take_apart(str(path), b"---\n" + data.removeprefix(b"\xef\xbb\xbf").rstrip() + b"\n---\n")
    file = _File(str(path), taken.lines)
    problems = list(taken.problems)
    if not problems and taken.value is not None:
        try:
            return file, ClassModel.model_validate(taken.value)
        except ValidationError as wrong:
            found = problems_of(list(wrong.errors()), ClassModel, file.name, taken.lines, taken.refused)
            # a misspelt field is also a missing one: what stands there is said first
            problems = sorted(found, key=lambda problem: (problem.code == "missing-field", problem.line))
    first = problems[0]
    said = first.message.replace("The front matter", "the file").replace("an entry", "a class file")
    said = said.replace("this entry", "a class file").replace("which entries don't", "which class files don't")
    help_ = f" {first.help}" if first.help else ""
    raise BadInput(f"in {path}, line {max(first.line - 1, 1)}: {said}{help_}")


def _lifter(file: _File, db: sqlite3.Connection, said: LifterModel, at: str, lift: LiftId, bar_kg: float) -> Lifter:
    if said.lift is not None:
        lift = LiftId(file.resolved(db, "lift", said.lift, f"{at}.lift"))
    if said.fault is None and said.holds is None:
        raise file.wrong(at, f"{said.name} has neither a `fault` nor `holds` ([] for who is new)")
    if said.fault is None and said.cause is not None:
        raise file.wrong(f"{at}.cause", "a cause needs its fault")
    fault = _fault(file, db, said.fault, f"{at}.fault", lift) if said.fault is not None else None
    if said.weight_kg is not None and said.weight_kg < bar_kg:
        raise file.wrong(f"{at}.weight_kg", f"{said.weight_kg:g} kg is less than the bar, which weighs {bar_kg:g} kg")
    cause = _cause(file, db, fault, said.cause, f"{at}.cause") if fault and said.cause is not None else None
    to = _goal(file, db, said.to, f"{at}.to", lift) if said.to is not None else None
    held = _drills(file, db, said.holds or [], f"{at}.holds")
    if to is not None and said.weight_kg is not None:
        raise file.wrong(f"{at}.weight_kg", f"a day's weight is the whole lift's, and {said.name} ends in a part of it")
    ends_in = to or read.lift(db, lift).drill
    if said.weight_kg is not None and fault is None and ends_in not in held:
        raise file.wrong(f"{at}.weight_kg", f"{said.name} is learning the lift, and has no day's weight yet")
    if said.today and fault is not None:
        raise file.wrong(f"{at}.today", f"{said.name} mends a fault: leave out `today`, or the fault")
    today = tuple(dict.fromkeys(_goal(file, db, text, f"{at}.today.{n}", lift) for n, text in enumerate(said.today)))
    where = file.at(f"{at}.name").rpartition(",")[0]
    if said.bar is not None and (fault is not None or ends_in not in held):
        raise file.wrong(
            f"{at}.bar", f"it is about a lift that is held, and {said.name} doesn't practise one: leave it out"
        )
    if said.bar == "light" and said.weight_kg is not None:
        raise file.wrong(
            f"{at}.bar", f"{said.name} stays with a light bar or has a day's weight: leave one of them out"
        )
    if said.bar == "racked" and lift != JERK:
        raise file.wrong(f"{at}.bar", f"only a jerk is taken from a rack, and {said.name} does the {lift}")
    return Lifter(
        said.name,
        lift,
        fault,
        cause,
        held,
        said.weight_kg,
        where,
        today=today,
        light=said.bar == "light",
        from_rack=said.bar == "racked",
        to=to,
        said=said.said or "",
        cleared=bool(said.cleared),
    )


def _fault(file: _File, db: sqlite3.Connection, text: str, at: str, lift: LiftId) -> FaultId:
    from kb.ask.find import find

    try:
        fault = read.fault(db, FaultId(resolve(db, "fault", text, lift=lift)))
    except BadInput as unknown:
        found = find(db, text, lift=lift)
        if found.caution:
            raise file.wrong(at, found.caution) from None
        nearest = unknown.nearest or tuple(hit.id for hit in found.faults[:3])
        raise file.wrong(at, str(unknown), nearest) from None
    serves = read.lift(db, lift).serves
    if not set(fault.lifts) & set(serves):
        raise file.wrong(at, f"{fault.id} is not a fault of the {lift}, but of the {' and '.join(fault.lifts)}")
    return fault.id


def _cause(file: _File, db: sqlite3.Connection, fault: FaultId, text: str, at: str) -> str:
    from difflib import get_close_matches

    ids = [cause.id for cause in read.fault(db, fault).causes]
    meant = [each for each in ids if fold(each) == fold(text)] or [each for each in ids if each.startswith(text)]
    if len(meant) != 1:
        near = get_close_matches(text, ids, n=1) or ids
        raise file.wrong(at, f"{fault} has no cause {text!r}", tuple(near))
    return meant[0]


def _drills(file: _File, db: sqlite3.Connection, texts: list[str], at: str) -> frozenset[DrillId]:
    found: dict[str, str] = {}
    for n, text in enumerate(texts):
        drill = file.resolved(db, "drill", text, f"{at}.{n}")
        if drill in found:
            raise file.wrong(f"{at}.{n}", f"{drill} is listed twice")
        found[drill] = text
    return frozenset(map(DrillId, found))


def _today(file: _File, db: sqlite3.Connection, model: ClassModel, lift: LiftId) -> tuple[DrillId, ...]:
    """What everyone who learns does today, each once, in the file's order."""
    if not model.today:
        return ()
    if model.to:
        raise file.wrong("today", "`today` and `to` both say where learners go: leave one of them out")
    if "new" in model.model_fields_set:
        raise file.wrong("today", "what is new is said by `today` itself: leave out `new`, or `today`")
    found: list[DrillId] = []
    for n, text in enumerate(model.today):
        drill = _goal(file, db, text, f"today.{n}", lift)
        if drill in found:
            raise file.wrong(f"today.{n}", f"{drill} is listed twice")
        found.append(drill)
    return tuple(found)


def _goal(file: _File, db: sqlite3.Connection, text: str, at: str, lift: LiftId) -> DrillId:
    """A drill that learners go to: one that a path to a part of the lift could end in."""
    from kb.ask.shelf import ending_in

    drill = DrillId(file.resolved(db, "drill", text, at))
    try:
        ending_in(read.shelf(db, lift), drill)
    except BadInput as unfit:
        raise file.wrong(at, str(unfit), unfit.nearest) from None
    return drill


def _gear(file: _File, db: sqlite3.Connection, model: ClassModel) -> dict[ItemId, int]:
    kits = read.kits(db)
    if model.kit not in kits:
        raise file.wrong("kit", f"there is no kit {model.kit!r}", tuple(sorted(kits)))
    have = dict.fromkeys(sorted(kits[model.kit]), PLENTY)
    given: set[str] = set()
    for name, count in model.gear.items():
        at = f"gear.{name}"
        item = ItemId(file.resolved(db, "equipment", name, at))
        if item == PARTNER:
            raise file.wrong(at, "a partner is one of the lifters, not a thing to be counted")
        if item in given:
            raise file.wrong(at, f"{item} is given twice")
        given.add(item)
        try:
            have[item] = _count(count)
        except ValueError as wrong:
            raise file.wrong(at, str(wrong)) from None
    have.pop(PARTNER, None)
    # who counts the bars counts what could be used for one too: where one bar is said, there aren't ten training bars
    items = read.items(db)
    spare = {stand_in.item for item in given for stand_in in items[ItemId(item)].stand_ins} - given
    return {item: count for item, count in have.items() if item not in spare}


def _count(count: Any) -> int:
    """How many there are; ValueError, with what is wrong, for what is no count."""
    if count == ENOUGH:
        return PLENTY
    if isinstance(count, bool) or not isinstance(count, (int, float)):
        raise ValueError(f"it must be a whole number, or `{ENOUGH}`")
    if count != int(count):
        raise ValueError(f"{count} of a thing can't be had: it must be a whole number")
    if not 0 <= count <= MOST_OF_ONE:
        raise ValueError(f"it must be between 0 and {MOST_OF_ONE}, not {count}")
    return int(count)
