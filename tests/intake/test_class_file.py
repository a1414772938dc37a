"""A class file: what it says is taken as meant, and whatever is wrong is said with file, line and field."""

from pathlib import Path

import pytest

from kb.ask import read
from kb.ask.class_.people import PLENTY
from kb.errors import BadInput
from kb.intake.class_file import DEMO, class_file
from kb.intake.class_model import ClassModel, LifterModel

HEAD = "lift: snatch\nminutes: 60\nlifters:\n"
GOOD = "  - {name: Ada, fault: hips-rise-first}\n"


def test_the_demo_is_read(db: read.sqlite3.Connection) -> None:
    """Twelve invented adults, six bars, fourteen sticks, four benches, an hour, from the snatch."""
    asked = class_file(DEMO, db)
    assert len(asked.lifters) == 12
    assert len({lifter.name for lifter in asked.lifters}) == 12
    assert all(lifter.name.isalpha() and lifter.lift == "snatch" for lifter in asked.lifters)
    counted = {item: count for item, count in asked.have.items() if count < PLENTY}
    assert counted == {"bar": 6, "stick": 14, "bench": 4}
    assert (asked.minutes, asked.coaches, asked.warm_up_s, asked.most_wait_s) == (60, 2, 600, 180)
    assert "partner" not in asked.have


def test_names_are_understood(db: read.sqlite3.Connection, tmp_path: Path) -> None:
    """Other names of lifts, faults, drills and things do; the beginning of a cause does."""
    file = tmp_path / "class.yaml"
    file.write_text(
        "\ufeffname: Ours\nlift: squat snatch\nminutes: 60\ngear: {barbell: 3, wall: plenty, wedge: 0}\n"
        "known: [Overhead squat]\nlifters:\n"
        "  - {name: Ada, fault: Hips rise first, cause: lost, holds: [air-squat], weight_kg: 42.5}\n"
        "  - {name: Bo, lift: clean, holds: []}\n",
        "utf-8",
    )
    asked = class_file(file, db)
    ada, bo = asked.lifters
    assert (ada.fault, ada.cause, ada.weight_kg) == ("hips-rise-first", "lost-back-angle", 42.5)
    assert (bo.lift, bo.fault, bo.holds) == ("clean", None, frozenset())
    assert (asked.have["bar"], asked.have["wall"], asked.have["wedge"]) == (3, PLENTY, 0)  # type: ignore[index]
    assert asked.known == {"overhead-squat"}
    assert ada.where.endswith("class.yaml, line 7")


CASES = [
    ("minutes: 60\nlifters:\n" + GOOD, 1, "`lift` is missing", ()),
    ("lift: snach\nminutes: 60\nlifters:\n" + GOOD, 1, "`lift`: there is no lift 'snach'", ("snatch",)),
    ("lift: snatch\nminutes: 0\nlifters:\n" + GOOD, 2, "`minutes` must be 1 or more, not 0", ()),
    ("lift: snatch\nminutes: 7.5\nlifters:\n" + GOOD, 2, "`minutes` must be a whole number", ()),
    ("lift: snatch\nminutes: 1:30\nlifters:\n" + GOOD, 2, "YAML reads", ()),
    ("lift: snatch\nminutes: .nan\nlifters:\n" + GOOD, 2, "YAML reads", ()),
    ("lift: snatch\nminutes: 99999999\nlifters:\n" + GOOD, 2, "must be 300 or less", ()),
    ("lift: snatch\nminute: 60\nlifters:\n" + GOOD, 2, "`minute` is no field", ()),
    ("lift: snatch\nminutes: 60\nminutes: 50\nlifters:\n" + GOOD, 3, "`minutes` is given twice", ()),
    ("coaches: 0\n" + HEAD + GOOD, 1, "`coaches` must be 1 or more", ()),
    ("most_wait_s: -5\n" + HEAD + GOOD, 1, "`most_wait_s` must be 0 or more", ()),
    ("warm_up_minutes: 60\n" + HEAD + GOOD, 1, "`warm_up_minutes`: the warm-up takes all of the 60 minutes", ()),
    ("kit: gym\n" + HEAD + GOOD, 1, "`kit`: there is no kit 'gym'", ("full", "hall")),
    ("gear: {bar: -1}\n" + HEAD + GOOD, 1, "`bar`: it must be between 0 and 500, not -1", ()),
    ("gear: {bar: 2.5}\n" + HEAD + GOOD, 1, "`bar`: 2.5 of a thing can't be had", ()),
    ("gear: {bar: many}\n" + HEAD + GOOD, 1, "`bar`: it must be a whole number, or `plenty`", ()),
    ("gear:\n  stick: 2\n  barr: 1\n" + HEAD + GOOD, 3, "`barr`: there is no equipment 'barr'", ("bar",)),
    ("gear: {bar: 2, barbell: 3}\n" + HEAD + GOOD, 1, "`barbell`: bar is given twice", ()),
    ("gear: {partner: 2}\n" + HEAD + GOOD, 1, "`partner`: a partner is one of the lifters", ()),
    ("known: [air-squat, air-squad]\n" + HEAD + GOOD, 1, "`known`: there is no drill 'air-squad'", ("air-squat",)),
    ("known: [air-squat, air-squat]\n" + HEAD + GOOD, 1, "`known`: air-squat is listed twice", ()),
    (HEAD + GOOD + GOOD, 5, "`name`: there are two lifters called Ada", ()),
    ("lift: snatch\nminutes: 60\nlifters: []\n", 3, "`lifters` is empty", ()),
    (HEAD + "  - {name: Ada, fault: hips-rise-frist}\n", 4, "`fault`: there is no fault", ("hips-rise-first",)),
    (
        HEAD + "  - {name: Ada, fault: clean-bar-crashes}\n",
        4,
        "`fault`: clean-bar-crashes is not a fault of the snatch",
        (),
    ),
    (HEAD + "  - {name: Ada, fault: my shoulder hurts}\n", 4, "`fault`: ", ()),
    (HEAD + "  - {name: Ada, fault: hips-rise-first, cause: nerves}\n", 4, "`cause`: hips-rise-first has no cause", ()),
    (HEAD + "  - {name: Ada, holds: [], cause: nerves}\n", 4, "`cause`: a cause needs its fault", ()),
    (HEAD + "  - {name: Ada}\n", 4, "Ada has neither a `fault` nor `holds`", ()),
    (HEAD + "  - {name: Ada, holds: [air-squad]}\n", 4, "`holds`: there is no drill", ("air-squat",)),
    (HEAD + "  - {name: Ada, holds: [], weight_kg: 40}\n", 4, "`weight_kg`: Ada is learning the lift", ()),
    (HEAD + "  - {name: Ada, holds: [hang-snatch], weight_kg: 40}\n", 4, "`weight_kg`: Ada is learning the lift", ()),
    (HEAD + "  - {name: Ada, fault: hips-rise-first, weight_kg: 15}\n", 4, "15 kg is less than the bar", ()),
    (HEAD + "  - {name: Ada, fault: hips-rise-first, weight_kg: 0}\n", 4, "`weight_kg`", ()),
    (HEAD + "  - {name: Ada, fault: hips-rise-first, weight_kg: 900}\n", 4, "`weight_kg`", ()),
    (HEAD + "  - {name: no, fault: hips-rise-first}\n", 4, "YAML reads `no` as false", ()),
    (HEAD + "  - {name: '', fault: hips-rise-first}\n", 4, "`name`", ()),
    (HEAD + "  - Ada\n", 4, "must be a map", ()),
    ("today: tall-snach\n" + HEAD + GOOD, 1, "`today`: there is no drill 'tall-snach'", ("tall-snatch",)),
    ("today: stick-pass-through\n" + HEAD + GOOD, 1, "`today`: Stick pass-through prepares or strengthens", ()),
    ("today: hang-clean\n" + HEAD + GOOD, 1, "`today`: hang-clean is not a drill of the snatch", ()),
    ("to: hang-clean\n" + HEAD + GOOD, 1, "`to`: hang-clean is not a drill of the snatch", ()),
    ("today: []\n" + HEAD + GOOD, 1, "`today` is empty", ()),
    ("today: [a, b, c, d]\n" + HEAD + GOOD, 1, "`today`", ()),
    ("today: [tall-snatch, tall snatch]\n" + HEAD + GOOD, 1, "`today`: tall-snatch is listed twice", ()),
    ("today: tall-snatch\nto: hang-snatch\n" + HEAD + GOOD, 1, "`today` and `to` both say where learners go", ()),
    ("today: tall-snatch\nnew: 2\n" + HEAD + GOOD, 1, "leave out `new`, or `today`", ()),
    ("lift: [snatch\n", 2, "isn't sound YAML", ()),
    ("", 1, "the file", ()),
    ("- lift\n", 1, "the file must be a map", ()),
]


@pytest.mark.parametrize(("text", "line", "message", "nearest"), CASES)
def test_what_is_wrong_is_said_where_it_stands(
    text: str, line: int, message: str, nearest: tuple[str, ...], db: read.sqlite3.Connection, tmp_path: Path
) -> None:
    """One sentence with file and line, the field, and the nearest right value."""
    file = tmp_path / "class.yaml"
    file.write_text(text, "utf-8")
    with pytest.raises(BadInput) as wrong:
        class_file(file, db)
    said = str(wrong.value)
    assert said.startswith(f"in {file}, line {line}"), said
    assert message.lower() in said.lower(), said
    assert "\n" not in said
    assert "entry" not in said
    assert "front matter" not in said.lower()
    assert wrong.value.nearest[: len(nearest)] == nearest


def test_words_of_pain_are_answered_by_the_caution(db: read.sqlite3.Connection, tmp_path: Path) -> None:
    """Never by a fault."""
    file = tmp_path / "class.yaml"
    file.write_text(HEAD + "  - {name: Ada, fault: my shoulder hurts in the catch}\n", "utf-8")
    with pytest.raises(BadInput) as wrong:
        class_file(file, db)
    assert "qualified" in str(wrong.value)
    assert wrong.value.nearest == ()


@pytest.mark.parametrize("data", [b"\xff\xfe", b"lift: \x00snatch", b"lift: x\n" * 20_000])
def test_a_file_that_is_no_text_or_too_large(data: bytes, db: read.sqlite3.Connection, tmp_path: Path) -> None:
    """Is refused in a sentence."""
    file = tmp_path / "class.yaml"
    file.write_bytes(data)
    with pytest.raises(BadInput) as wrong:
        class_file(file, db)
    assert str(file) in str(wrong.value)
    with pytest.raises(BadInput, match="can't be read"):
        class_file(tmp_path, db)
    with pytest.raises(BadInput, match="can't be read"):
        class_file(tmp_path / "none.yaml", db)


def test_what_everyone_does_today_is_one_drill_or_a_list(db: read.sqlite3.Connection, tmp_path: Path) -> None:
    """By any name, in the file's order."""
    file = tmp_path / "class.yaml"
    for said, meant in (("Tall snatch", ("tall-snatch",)), ("[tall snatch, ohs]", ("tall-snatch", "overhead-squat"))):
        file.write_text(f"today: {said.replace('ohs', 'overhead-squat')}\n{HEAD}{GOOD}", "utf-8")
        assert class_file(file, db).today == meant


def test_the_page_about_classes_is_true(db: read.sqlite3.Connection, tmp_path: Path) -> None:
    """Its example is taken as it stands, and every field is explained with what holds if it is left out."""
    page = (DEMO.parents[1] / "docs" / "class.md").read_text("utf-8")
    file = tmp_path / "class.yaml"
    file.write_text(page.split("```yaml\n")[1].split("```")[0], "utf-8")
    assert len(class_file(file, db).lifters) == 2
    for name, field in ClassModel.model_fields.items():
        row = next(line for line in page.splitlines() if line.startswith(f"| `{name}` "))
        if isinstance(field.default, (int, float, str)):
            assert f"| {field.default:g} |" in row if not isinstance(field.default, str) else field.default in row
    assert all(f"`{name}" in page for name in LifterModel.model_fields)


@pytest.mark.parametrize(
    ("lift", "lifter", "says"),
    [
        ("snatch", "{name: A, holds: [full-snatch], bar: racked}", "only a jerk is taken from a rack"),
        ("jerk", "{name: A, holds: [full-jerk], bar: racked}", "there is no rack"),
        ("snatch", "{name: A, holds: [full-snatch], bar: light, weight_kg: 40}", "leave one of them out"),
        ("snatch", "{name: A, holds: [full-snatch], bar: heavy}", "light"),
        ("snatch", "{name: A, holds: [hang-snatch], bar: light}", "doesn't practise one"),
        ("jerk", "{name: A, fault: jerk-press-out, weight_kg: 40, bar: racked}", "doesn't practise one"),
    ],
)
def test_what_a_lifter_s_bar_can_be(
    db: read.sqlite3.Connection, tmp_path: Path, lift: str, lifter: str, says: str
) -> None:
    """Light, or from a rack that is there; never both light and at a weight."""
    file = tmp_path / "class.yaml"
    file.write_text(f"lift: {lift}\nminutes: 40\ngear: {{bar: 2, rack: 0}}\nlifters:\n  - {lifter}\n", "utf-8")
    with pytest.raises(BadInput, match=says) as wrong:
        class_file(file, db)
    assert "line 5" in str(wrong.value)
