"""An entry on a terminal, whatever its kind: what it is in a few facts, then its text."""

from collections.abc import Mapping, Sequence

from kb.dials import dials_of
from kb.dose import work_seconds
from kb.feet import FEET
from kb.show.bars import Bar, bands_of
from kb.show.chart import chart
from kb.show.coach_words import CAUTIONS, LOADS, dosed, duration, either, human, listed, moved_on, throughout_said
from kb.show.demand_words import asked
from kb.show.look_first import look_first
from kb.show.prose import sections_text
from kb.show.setting import Setting, aside, hanging, labelled, rows, titled
from kb.show.tell_lines import tell_lines
from kb.terms import Catch, Drill, Fault, Item, Lift, LiftId, Load, Position, Speed, Stage, StandIn

__all__ = ["drill_text", "equipment_text", "fault_text", "lift_text", "position_text"]

LABEL = 11
"""Columns of the word before a fact."""

Names = Mapping[str, str]
"""The name of each entry that may be spoken of, by id."""

SPEED_WORDS = {Speed.SLOW: "slow", Speed.PAUSED: "paused", Speed.FULL: "full"}

STAGES = {Stage.PREPARE: "preparation", Stage.FINISH: "strengthening"}


def _head(name: str, kind: str, also: Sequence[str], setting: Setting) -> list[str]:
    lines = aside(name, kind, setting)
    return lines + (hanging("", f"Also: {', '.join(also)}", setting) if also else [])


def _facts(facts: Sequence[tuple[str, str]], setting: Setting) -> list[str]:
    lines = labelled(facts, setting, hang=LABEL)
    return ["", *lines] if lines else []


def _names(ids: Sequence[str], names: Names) -> list[str]:
    """Names with their ids, so that the next `show` can be typed; an id that is gone stands alone."""
    return [f"{names[each]} [{each}]" if each in names else each for each in ids]


def drill_text(drill: Drill, names: Names, lifts: Mapping[LiftId, Lift], setting: Setting) -> list[str]:
    """A drill: where it lies on its lifts, how much, what it needs and works on, then its text."""
    kind = STAGES.get(drill.stage, drill.stage.word)
    lines = _head(drill.name, setting.between.join([*drill.lifts, kind]), drill.also, setting)
    for lift_id in drill.reach if drill.stage is not Stage.PREPARE else ():
        lift = lifts[lift_id]
        bar = Bar(drill.name, work_seconds(drill), dials_of(drill, lift), "")
        lines += ["", *([f"{lift.name}:"] if len(drill.reach) > 1 else []), *chart(lift, [bar], setting)]
    faults = dict.fromkeys(said.fault for said in drill.faults)
    causes = {
        fault: [human(said.cause) for said in drill.faults if said.fault == fault and said.cause] for fault in faults
    }
    needs = [either([names.get(member, member) for member in group]) for group in drill.prerequisites]
    facts = [
        ("How much", setting.between.join([dosed(drill, setting), duration(work_seconds(drill))])),
        ("Load", _load(drill)),
        ("Opens", listed([human(joint) for joint in drill.opens])),
        ("Move on", f"when {moved_on(drill.standard)}"),
        ("Gear", ", ".join(names.get(item, item).lower() for item in drill.equipment) or "none"),
        ("Helped by", ", ".join(names.get(aid, human(aid)).lower() for aid in drill.aid)),
        ("Feet", FEET[drill.feet] if drill.feet != "still" else ""),
        ("First", "; ".join(needs)),
        ("Made of", listed([names.get(part, part) for part in drill.made_of])),
        ("Easier", "; ".join(f"{names.get(each.drill, each.drill)}: {each.eases}" for each in drill.regressions)),
        ("Harder", drill.turn_up or ""),
        ("Mind", ", ".join(CAUTIONS.get(caution, human(caution)) for caution in drill.cautions)),
        ("Suits", drill.suits or ""),
        ("Not for", drill.not_for or ""),
    ]
    lines += _facts(facts, setting)
    works = [
        line
        for fault, of in causes.items()
        for line in hanging("  - ", names.get(fault, fault) + (f": {listed(of)}" if of else ""), setting)
    ]
    lines += titled("Works on", works, setting)
    return lines + sections_text(drill.sections, setting)


def _load(drill: Drill) -> str:
    least, most = drill.load
    if drill.stage is Stage.PREPARE:
        return ""
    said = LOADS[least] if least == most else f"{LOADS[least]} to {LOADS[most]}"
    if drill.load_from is not None:
        low, high = drill.load_from.percent
        said += f", {low} to {high} % of the best {human(drill.load_from.lift)}"
    return said


def fault_text(fault: Fault, names: Names, lifts: Mapping[LiftId, Lift], setting: Setting) -> list[str]:
    """A fault: what it looks like, its causes, how to tell them apart, where to go on."""
    lines = _head(fault.name, "fault", fault.also, setting)
    for lift_id in fault.lifts:
        lift = lifts[lift_id]
        heading = [f"{lift.name}:"] if len(fault.lifts) > 1 else []
        lines += ["", *heading, *chart(lift, [], setting, bands=bands_of(fault, lift))]
    least = fault.shows_at
    shows = [
        f"at {SPEED_WORDS[least.speed]} speed" if least.speed else "",
        f"with a {LOADS[least.load]} or more" if least.load else "",
        f"in a catch ({least.catch.word} or deeper)" if least.catch else "",
    ]
    lines += _facts(
        [
            ("Seen from", f"the {fault.view}"),
            ("Shows", ", ".join(each for each in shows if each)),
            ("Gone when", fault.gone),
            ("Compare", ", ".join(_names(fault.look_alikes, names))),
        ],
        setting,
    )
    first = {"Looks like": fault.sections.get("Looks like", ""), "Look first": look_first(fault)}
    lines += sections_text({heading: text for heading, text in first.items() if text}, setting)
    causes = [
        line
        for n, cause in enumerate(fault.causes, 1)
        for line in hanging(
            f"  {n}. ",
            f"{human(cause.id)} ({human(cause.kind)}"
            + (f": {names.get(cause.earlier, cause.earlier)}" if cause.earlier else "")
            + f"). {cause.text}"
            + (f" {throughout_said(cause, briefly=True)}" if cause.throughout else ""),
            setting,
        )
    ]
    lines += titled("Causes, commonest first", causes, setting)
    lines += tell_lines(fault, setting)
    lines += sections_text(fault.sections, setting, without=("Looks like", "Look first"))
    commands = [f"drillpath chain {fault.id}" + _lift_option(fault, lift) for lift in fault.lifts]
    return [*lines, "", *(f"`{command} --cause ...`" for command in commands)]


def _lift_option(fault: Fault, lift: LiftId) -> str:
    return f" --lift {lift}" if len(fault.lifts) > 1 else ""


def lift_text(lift: Lift, names: Names, setting: Setting) -> list[str]:
    """A lift: its timeline with the posture at each point, its standard, its text."""
    lines = _head(lift.name, "lift", lift.also, setting)
    points = [
        (f"{n}", human(timed.at), names.get(timed.position, timed.position)) for n, timed in enumerate(lift.timeline, 1)
    ]
    lines += titled("Timeline", rows(points, setting), setting)
    facts = [
        ("Made of", listed([names.get(part, part) for part in lift.parts])),
        ("Drill", "".join(_names([lift.drill], names))),
        ("Learnt", f"when {moved_on(lift.standard)}"),
    ]
    lines += _facts(facts, setting)
    return [*lines, *sections_text(lift.sections, setting), "", f"`drillpath path {lift.id}`"]


_PARTS = ("ankle", "knee", "hip", "trunk", "shoulder", "elbow", "wrist")
"""Joints from the floor up, as a body is read."""


def position_text(position: Position, setting: Setting) -> list[str]:
    """A position: its angles, what they ask of a body, where the bar and the feet are, its text."""
    lines = _head(position.name, "position", position.also, setting)
    joints = sorted(position.angles, key=lambda joint: (_PARTS.index(joint.rpartition("_")[2]), joint))
    angles = ", ".join(f"{joint.replace('_', ' ')} {position.angles[joint]:g}" for joint in joints)
    facts = [
        ("Angles", f"{angles} (degrees from standing straight, bending positive; trunk from the vertical)"),
        ("Asks for", asked(position)),
        ("Bar", human(position.bar)),
        ("Feet", human(position.contact)),
    ]
    return [*lines, *_facts(facts, setting), *sections_text(position.sections, setting)]


def equipment_text(item: Item, names: Names, setting: Setting) -> list[str]:
    """A piece of equipment: its kits, what can serve for it and what that loses, its text."""
    lines = _head(item.name, "equipment", item.also, setting)
    lines += _facts([("Kits", listed([*item.kits, "full"]))], setting)
    stand_ins = [
        line
        for stand_in in item.stand_ins
        for line in hanging("  - ", f"{names.get(stand_in.item, stand_in.item)}: {_lost(stand_in)}", setting)
    ]
    lines += titled("Can be stood in for by", stand_ins, setting)
    return lines + sections_text(item.sections, setting)


def _lost(stand_in: StandIn) -> str:
    caps = []
    if stand_in.load < Load.WORKING:
        caps.append(f"no more than {LOADS[stand_in.load]}")
    if stand_in.speed < Speed.FULL:
        caps.append(f"no faster than {stand_in.speed.word}")
    if stand_in.catch < Catch.FULL:
        caps.append(f"no deeper than {stand_in.catch.word}")
    return stand_in.lost + (f" ({', '.join(caps)})" if caps else "")
