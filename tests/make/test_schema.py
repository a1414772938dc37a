"""Schema and reference are made from the models, and agree with what reading takes."""

import re
from pathlib import Path
from typing import Any

import pytest
import yaml
from broken_cases import BROKEN, SMALL, cases, sound
from jsonschema import Draft202012Validator
from pydantic import BaseModel

from kb.make.fields import model_in
from kb.make.files import FOLDERS, Kind
from kb.make.limits import LIMITS
from kb.make.models import MODELS
from kb.make.schema import field_reference, json_schema
from kb.make.structure.impossible_dose import rule

KINDS = tuple(MODELS)


class Plain(yaml.SafeLoader):
    """YAML in which yes and no are words, save for `bridge`."""


Plain.yaml_implicit_resolvers = {
    first: [(tag, pattern) for tag, pattern in of if not tag.endswith("bool")]
    for first, of in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


def front_matter(path: Path) -> Any:
    """An entry's front matter as an editor would see it."""
    value = yaml.load(path.read_text(encoding="utf-8").split("---\n")[1], Plain)  # noqa: S506 - a SafeLoader
    if value.get("bridge") == "no":
        value["bridge"] = False
    return value


@pytest.mark.parametrize("kind", KINDS)
def test_schemas_are_schemas(kind: Kind) -> None:
    """Each is sound JSON Schema, says null nowhere and carries no title but its own."""
    schema = json_schema(kind)
    Draft202012Validator.check_schema(schema)
    assert "null" not in str(schema)
    assert str(schema).count("'title'") == 1


@pytest.mark.parametrize("path", sorted(SMALL.rglob("*.md")), ids=lambda path: path.stem)
def test_sound_entries_meet_their_schema(path: Path) -> None:
    """What reading takes, an editor takes."""
    schema = json_schema(FOLDERS[path.parent.name])
    assert list(Draft202012Validator(schema).iter_errors(front_matter(path))) == []


@pytest.mark.parametrize(
    "row",
    [
        rows[0]
        for rows in cases().values()
        if rows[0].code in ("unknown-field", "missing-field", "wrong-type", "bad-value", "repeated-value")
        # what two fields must be together, and that a list names nothing twice in maps, a schema doesn't say
        and rows[0].case not in ("angles-of-both-stances", "angle-of-1000", "easier-twice")
    ],
    ids=lambda row: row.case,
)
def test_what_reading_refuses_the_schema_refuses(row: Any) -> None:
    """Fields, types, words, lengths and repeats are judged alike."""
    schema = json_schema(FOLDERS[row.entry.split("/")[1]])
    assert list(Draft202012Validator(schema).iter_errors(front_matter(BROKEN / f"{row.case}.md")))


def models(model: type[BaseModel]) -> list[type[BaseModel]]:
    """A model and all within it."""
    inner = [found for field in model.model_fields.values() if (found := model_in(field.annotation))]
    return [model, *(each for one in inner for each in models(one))]


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_says_what_it_is(kind: Kind) -> None:
    """No field without a description, no model without a docstring."""
    for model in models(MODELS[kind]):
        assert model.__doc__
        for name, field in model.model_fields.items():
            assert field.description, f"{model.__name__}.{name}"
            assert "|" not in field.description


def test_reference_names_every_field() -> None:
    """A row for each field of each model, under its kind, and every kind's headings and folders."""
    text = field_reference()
    for kind in KINDS:
        part = text.split(f"\n## {kind.capitalize()}\n")[1].split("\n## ")[0]
        for model in models(MODELS[kind]):
            for name, field in model.model_fields.items():
                assert f"\n| `{field.alias or name}` |" in part
    for folder in FOLDERS:
        assert f"`drills/{folder}/`" in text
    assert all(line.count(" | ") == 3 for line in text.split("\n") if line.startswith("|"))


@pytest.mark.parametrize(
    "row",
    [
        "| `reach` | pair of ids or map by lift of pairs of ids | no | first and last point of the timeline it covers;",
        "| `rounds` | whole number, 1 to 12 | no (`1`) | rounds, or intervals |",
        "| `tempo` | list of 4 whole numbers | no |",
        "| `bridge` | `yes` or `no` | no (`yes`) |",
        "| `prerequisites` | list of ids or lists of ids | no |",
        "| `faults` | list of ids or maps | no |",
        "| `phases` | list of pairs of ids | yes |",
        "| `drill` | id | yes | the drill that is the whole lift |",
        "| `for` | list of ids | no |",
        "| `view` | `side`, `front`, `back` | no (`side`) |",
    ],
)
def test_reference_says_values_in_words(row: str) -> None:
    """Forms are told as a writer thinks of them."""
    assert f"\n{row}" in field_reference()


def test_limits_of_the_schema_are_the_rules() -> None:
    """One table for both: a dose at its limits is taken, one past them isn't, by the schema and by the rule."""
    drill = next(iter(sound().drills.values()))
    properties = json_schema("drill")["$defs"]["DoseModel"]["properties"]
    for name, (least, most) in LIMITS.items():
        if name in properties:
            assert (properties[name]["minimum"], properties[name]["maximum"]) == (least, most)
        for value, wrong in ((least, False), (most, False), (most + 1, True), (least - 1, True)):
            changed = (
                drill._replace(dose=drill.dose._replace(**{name: value}))
                if name in properties
                else drill._replace(**{name: value})
            )
            library = type(sound())(root=Path(), drills={drill.id: changed})
            assert any(f"`{name}` must be" in problem.message for problem in rule(library)) is wrong


def test_reference_is_markdown_without_surprises() -> None:
    """Headings of two levels below one title, and no line that a table would break on."""
    text = field_reference()
    assert text.startswith("# Fields of an entry\n")
    assert set(re.findall(r"^#+", text, re.MULTILINE)) == {"#", "##", "###"}
