"""One entry parsed: what it may say, what it becomes, and how each mistake is told."""

from typing import get_args

import pytest
from one_entry import DRILL, parsed, small, told

from kb.make import fields, sentences
from kb.make.body_text import SECTIONS
from kb.make.files import Kind
from kb.make.models import MODELS
from kb.make.structure.unknown_equipment import HAND
from kb.terms import Addressed, Catch, Drill, Fault, Item, Lift, Load, Position, Speed, Stage


def test_a_drill_becomes_its_record() -> None:
    """Every field of a drill is taken over; one reach stands for all lifts, a map for each."""
    drill = parsed(DRILL).record
    assert isinstance(drill, Drill)
    assert parsed(DRILL).problems == ()
    assert drill.also == ("extra pull", "012")
    assert drill.stage is Stage.SEGMENT
    assert drill.target_position == {"snatch": "snatch-knee", "clean": "clean-knee"}
    assert drill.reach == {"snatch": ("start", "knee"), "clean": ("start", "knee")}
    assert (drill.leaves_out, drill.speed, drill.load, drill.catch) == (
        ("knee",),
        Speed.SLOW,
        (Load.STICK, Load.LIGHT),
        Catch.NONE,
    )
    assert drill.aid == ("wall", HAND)
    assert drill.faults == (
        Addressed(fault="hips-rise-first", cause="weak-legs"),  # type: ignore[arg-type]
        Addressed(fault="bar-drifts-forward"),  # type: ignore[arg-type]
    )
    assert drill.prerequisites == (("start-hold",), ("knee-hold", "hip-hold"))
    assert drill.dose._asdict() == {
        "rounds": 3,
        "reps": 4,
        "tempo": (3, 1, 1, 0),
        "hold_s": 5,
        "sides": 2,
        "rest_s": 30,
        "good": 0,
        "success": 80,
        "every_s": 0,
    }
    assert (drill.set_up_s, drill.teach_s, drill.bridge, drill.not_for) == (20, 90, False, "anyone in a hurry")
    assert drill.load_from is not None
    assert drill.load_from.percent == (40, 55)
    assert drill.sections == {"Do": "Lift it.\n\n- slowly\n  and close", "Say": '- "Push the floor"'}
    assert drill.cues == ("Push the floor",)


def test_what_is_left_out_stands_at_its_default() -> None:
    """A free drill at one load, with a target for its only lift."""
    text = small("pull/start-hold.md")
    drill = parsed(text).record
    assert isinstance(drill, Drill)
    assert (drill.aid, drill.bridge, drill.not_for, drill.made_of) == ((), True, None, ())
    assert drill.target_position == {"clean": "clean-start"}


@pytest.mark.parametrize(
    ("kind", "file", "record"),
    [
        ("lift", "lifts/clean.md", Lift),
        ("position", "positions/jerk-split.md", Position),
        ("fault", "faults/hips-rise-first.md", Fault),
        ("equipment", "equipment/bar.md", Item),
        ("drill", "jerk/full-jerk.md", Drill),
    ],
)
def test_each_kind_becomes_its_record(kind: Kind, file: str, record: type) -> None:
    """The five kinds, each with the sections it was given."""
    found = parsed(small(file), kind).record
    assert isinstance(found, record)
    assert set(found.sections) <= set(SECTIONS[kind])
    assert found.sections


def test_stand_ins_cap_only_what_they_say() -> None:
    """A cap left out is the top of its scale."""
    bar = parsed(small("equipment/bar.md"), "equipment").record
    assert isinstance(bar, Item)
    stick = bar.stand_ins[0]
    assert (stick.item, stick.load, stick.speed, stick.catch) == ("stick", Load.STICK, Speed.FULL, Catch.FULL)


def test_words_are_the_scales() -> None:
    """What front matter may say is exactly what the scales in kb.terms are called."""
    for words, scale in (
        (fields.WordOfStage, Stage),
        (fields.WordOfSpeed, Speed),
        (fields.WordOfLoad, Load),
        (fields.WordOfCatch, Catch),
    ):
        assert get_args(words) == tuple(member.word for member in scale)


def test_all_problems_at_once() -> None:
    """Front matter and body are both judged, each mistake once, in order of lines."""
    text = DRILL.replace("speed: slow", "speed: fast").replace("rounds: 3", "rounds: 3.5").replace("## Say", "## Tell")
    text = text.replace("name: Extra drill", "name: no").replace("set_up_s", "setup_s")
    assert [(line, code) for line, code, *_ in told(text)] == [
        (2, "yaml-surprise"),
        (9, "bad-value"),
        (19, "wrong-type"),
        (20, "unknown-field"),
        (34, "unknown-heading"),
    ]


@pytest.mark.parametrize(
    ("written", "instead", "message", "help_"),
    [
        ("speed: slow", "speed: pause", "`speed` can't be `pause`: it is held, slow, paused or full.", "`paused`"),
        ("speed: slow", "speed: 3", "`speed` can't be the number 3: it is held, slow, paused or full.", ""),
        ("catch: none", "catch: none\nfeet: jump", "`feet` can't be `jump`: it is still, step or land.", ""),
        ("aid: [wall, hand]", "aid: wall", "`aid` can't be `wall`: it is `free` or a list.", ""),
        ("aid: [wall, hand]", "aid: {wall: 1}", "`aid` can't be a map: it is `free` or a list.", ""),
        ("reach: [start, knee]", "reach: start", "`reach` must be a list, not the text `start`.", "brackets"),
        ("reach: [start, knee]", "reach: [a, b, c]", "`reach` needs at most 2 items, and has 3.", ""),
        ("reach: [start, knee]", "reach: {}", "`reach` is empty: it needs at least one.", ""),
        ("reach: [start, knee]", "reach: {Snatch: [a, b]}", "`Snatch` (of `reach`) can't be `Snatch`: an id", ""),
        ("name: Extra drill", 'name: "  "', "`name` is empty.", "Write something"),
        ("name: Extra drill", 'name: " x"', "`name` must be one line, without space around it.", ""),
        ("name: Extra drill", f"name: {'x' * 121}", "`name` is longer than 120 characters.", "Shorten"),
        ("name: Extra drill", "name: [x]", "`name` must be text, not a list.", "quotation"),
        ("name: Extra drill", "name: 1.5", "`name` must be text, not the number 1.5.", "quotation"),
        ("count: 4", "count: 0", "`count` (of `standard`) must be 1 or more, not 0.", ""),
        ("dose: {", "dose: [{", "", ""),
        ("cause: weak-legs}", "because: weak-legs}", "`because` is no field of `faults`.", "`cause`"),
        ("bridge: no", 'bridge: "no"', "`bridge` must be `yes` or `no`, not the text `no`.", "quotation"),
        ("cautions: [back]", "cautions: [bakc]", "The 1st of `cautions` can't be `bakc`: it is", "`back`"),
        ("[start-hold, [", "[start-hold, start-hold, [", "`prerequisites` says `start-hold` twice.", ""),
        ("[[knee-hold, hip-hold]]", "x", "", ""),
        ("eases: ", "ease: ", "`eases` (1st of `regressions`) is missing.", "what it eases"),
        ("load: [stick, light]", "load: {least: stick}", "`load` can't be a map: it is none, stick", ""),
        ("tempo: [3, 1, 1, 0]", "tempo: [3, x, 1, 0]", "The 2nd of `tempo` must be a whole number, not the text", ""),
    ],
)
def test_sentences(written: str, instead: str, message: str, help_: str) -> None:
    """A mistake is told in one sentence that names the field, and helps where it can."""
    if not message:  # not a mistake of a value: only that it is told, and once, or isn't there
        assert len(told(DRILL.replace(written, instead))) == (written in DRILL)
        return
    problems = told(DRILL.replace(written, instead))
    assert any(found.startswith(message) and help_ in hint for _, _, found, hint in problems), problems


def test_a_misspelt_field_within_a_map_names_its_owner() -> None:
    """Fields of maps in lists are said with the list they belong to."""
    text = small("faults/hips-rise-first.md").replace("shows_at: {load: light}", "shows_at: {laod: light}")
    assert [(code, message, hint) for _, code, message, hint in told(text, "fault")] == [
        ("unknown-field", "`laod` is no field of `shows_at`.", "Did you mean `load`?")
    ]
    text = small("faults/hips-rise-first.md").replace("kind: timing", "kind: timming")
    ((_, code, message, hint),) = told(text, "fault")
    assert (code, hint) == ("bad-value", "Did you mean `timing`?")
    assert message.startswith("`kind` (4th of `causes`) can't be `timming`: it is mobility, strength,")


def test_times_and_seconds() -> None:
    """A tell takes at most ten minutes, an id of a cause is an id."""
    text = (
        small("faults/hips-rise-first.md").replace("seconds: 25", "seconds: 900").replace("id: hips-set-low", "id: Low")
    )
    assert [code for _, code, *_ in told(text, "fault")] == ["bad-value", "bad-value"]


@pytest.mark.parametrize(
    ("body", "codes"),
    [
        ("## Do\n> > > > > > > > > > > > > deep\n", ["too-deep"]),
        ("## Do\n" + "".join("  " * n + "- a\n" for n in range(15)), ["too-deep"]),
        ("## Do\nA <https://example.org> and [one](http://example.org).\n", []),
        ("## Do\nA <me@example.org>.\n", ["bad-link"]),
        ("## Do\nAn [empty]() one.\n", ["bad-link"]),
        ("## Do\n![far](https://example.org/a.png)\n", []),
        ("## Do\n[quiet]: file:///etc\nSee [quiet].\n", ["bad-link"]),
        ("## Do\n`<b>` and\n\n    <i>\n\n```\n## Not a heading\n<u>\n```\n", []),
        ("## Do\n<!-- hidden -->\n", ["raw-html"]),
        ("## Do\none\ntwo\n<b>three\n", ["raw-html"]),
        ("Do\n--\nUnderlined.\n", []),
        ("# Do\nOf level 1.\n", ["unknown-heading"]),
        ("", []),
        ("\n\n", []),
        ("Only text.\n", ["text-before-heading"]),
        ("## Something\n", ["unknown-heading"]),
    ],
)
def test_bodies(body: str, codes: list[str]) -> None:
    """What a body may hold, and what it may not."""
    assert [code for _, code, *_ in told(DRILL.split("## Do")[0] + body)] == codes


def test_lines_within_a_paragraph() -> None:
    """Raw HTML is told at its own line, not at its paragraph's."""
    head = DRILL.split("## Do")[0]
    ((line, *_),) = told(head + "## Do\none\ntwo\n<b>three\n")
    assert line == head.count("\n") + 4


def test_body_is_judged_though_the_front_matter_isnt_sound() -> None:
    """A mistake above doesn't hide those below."""
    assert [code for _, code, *_ in told("---\nname: [\n---\n## Do\n<div>\n")] == ["bad-yaml", "raw-html"]


@pytest.mark.parametrize(
    ("loc", "path"),
    [
        (("causes", 1, "kind"), "causes.1.kind"),
        (("faults", 0, "some", "cause"), "faults.0.cause"),
        (("standard",), ""),
        (("reach", "map", "snatch", "[key]"), "reach"),
    ],
)
def test_place(loc: tuple[int | str, ...], path: str) -> None:
    """A location leads to the last part of it that is written."""
    lines = dict.fromkeys(("causes", "causes.1", "causes.1.kind", "faults", "faults.0", "faults.0.cause", "reach"), 1)
    assert sentences.place(loc, lines) == path


def test_ordinals() -> None:
    """1st, 2nd, 3rd, 4th, 11th, 21st."""
    said = [sentences._called(f"causes.{n}").split()[1] for n in (0, 1, 2, 3, 10, 11, 20, 111)]
    assert said == ["1st", "2nd", "3rd", "4th", "11th", "12th", "21st", "112th"]


def test_a_mistake_within_an_untold_type_is_told_all_the_same() -> None:
    """An error of a type that has no sentence of its own is said in the model's words."""
    error = {"type": "frozen_set_type", "loc": ("name",), "input": 1, "msg": "Input should be odd"}
    (problem,) = sentences.problems_of([error], MODELS["drill"], "x.md", {"name": 2}, set())
    assert problem == ("x.md", 2, "bad-value", "`name` can't be taken: Input should be odd.", "")
