"""What entries may hold, as JSON Schema for editors and as a reference for people: both made from the models."""

from collections.abc import Sequence
from typing import Annotated, Any, Literal, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from kb.make.body_text import SECTIONS
from kb.make.fields import model_in
from kb.make.files import FOLDERS, Kind
from kb.make.models import MODELS

__all__ = ["field_reference", "json_schema"]


def json_schema(kind: Kind) -> dict[str, Any]:
    """The JSON Schema (2020-12) of the front matter of one kind of entry, for editors to complete and check by.

    It is as strict as reading is, save for what only the whole library can tell: whether names lead anywhere
    and whether values go together.
    """
    schema = MODELS[kind].model_json_schema(by_alias=True)
    title = "Equipment" if kind == "equipment" else kind.capitalize()
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **_untitled(schema),
        "title": f"{title} (front matter of drillpath)",
    }


def _untitled(value: Any) -> Any:
    """A schema without titles that only repeat a name, and without null, which YAML may not say here."""
    if isinstance(value, list):
        return [_untitled(item) for item in value]
    if not isinstance(value, dict):
        return value
    said = {
        key: {name: _untitled(of) for name, of in inner.items()} if key in _NAMED else _untitled(inner)
        for key, inner in value.items()
        if key != "title" and not (key == "default" and inner is None)
    }
    if "patternProperties" in said:
        said["additionalProperties"] = False
    forms = [form for form in said.get("anyOf", ()) if form != {"type": "null"}]
    return {**forms[0], **{key: inner for key, inner in said.items() if key != "anyOf"}} if len(forms) == 1 else said


_NAMED = ("properties", "$defs")
"""Under these keys stand names of ours, which may be called anything, even `title`."""


def field_reference() -> str:
    """Every field of every kind of entry as Markdown: a table for each kind and for each map within it."""
    parts = [
        "# Fields of an entry\n\n"
        "Made from the models in `kb/make/models.py` by `build.py`: change them, not this page. An entry is front "
        "matter (YAML between two lines of `---`), then sections with the headings given here.\n"
    ]
    for kind, model in MODELS.items():
        folders = ", ".join(f"`drills/{folder}/`" for folder, of in FOLDERS.items() if of == kind)
        parts.append(
            f"\n## {kind.capitalize()}\n\nIn {folders}. Sections: {', '.join(SECTIONS[kind])}.\n\n{_table(model)}"
        )
        for name, inner in _inner(model).items():
            parts.append(f"\n### {name} ({kind})\n\n{(inner.__doc__ or '').strip()}\n\n{_table(inner)}")
    return "".join(parts)


def _table(model: type[BaseModel]) -> str:
    rows = ["| field | value | needed | says |", "| --- | --- | --- | --- |"]
    for name, field in model.model_fields.items():
        needed = "yes" if field.is_required() else _default(field)
        rows.append(f"| `{field.alias or name}` | {_value(field)} | {needed} | {field.description} |")
    return "\n".join(rows) + "\n"


def _default(field: FieldInfo) -> str:
    if field.default_factory is not None or field.default is None:
        return "no"
    if isinstance(field.default, bool):
        return "no (`yes`)"
    return f"no (`{field.default}`)"


def _value(field: FieldInfo) -> str:
    """What a field takes, in words."""
    limits = field.json_schema_extra if isinstance(field.json_schema_extra, dict) else {}
    said = " or ".join(dict.fromkeys(_marked(field.annotation, field.metadata)))
    return f"{said}, {limits['minimum']} to {limits['maximum']}" if limits else said


_PLAIN: dict[Any, str] = {str: "text", int: "whole number", float: "number", bool: "`yes` or `no`"}
_PLURAL = {"id": "ids", "map": "maps", "text": "texts", "whole number": "whole numbers", "pair of ids": "pairs of ids"}


def _marked(annotation: Any, marks: Sequence[Any]) -> list[str]:
    """The forms of a type that has marks beside it: a pattern makes text an id, a length makes a list a pair."""
    if annotation is str and "a-z" in str(marks):
        return ["id"]
    lengths = [length for mark in marks if (length := getattr(mark, "max_length", None))]
    forms = _forms(annotation)
    if lengths and forms[0].startswith("list of"):
        count = {2: "pair of", 4: "list of 4"}.get(lengths[0], "list of")
        return [form.replace("list of", count, 1) for form in forms]
    return forms


def _forms(annotation: Any) -> list[str]:
    """The forms that a value can take, each in a few words."""
    if annotation in _PLAIN:
        return [_PLAIN[annotation]]
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return ["map"]
    origin, inner = get_origin(annotation), get_args(annotation)
    if origin is Annotated:
        metadata = [mark for extra in inner[1:] for mark in getattr(extra, "metadata", [extra])]
        return _marked(inner[0], metadata)
    if origin is list:
        return [f"list of {_plural(_forms(inner[0]))}"]
    if origin is dict:
        return [f"map by lift of {_plural(_forms(inner[1]))}"]
    if origin is Literal:
        return [", ".join(f"`{word}`" for word in inner)]
    return list(dict.fromkeys(form for part in inner if part is not type(None) for form in _forms(part)))


def _plural(forms: list[str]) -> str:
    return " or ".join(_PLURAL.get(form, form.replace("list of", "lists of", 1)) for form in forms)


def _inner(model: type[BaseModel]) -> dict[str, type[BaseModel]]:
    """The maps within a kind's fields by the field's name, each once, those within them too."""
    found: dict[str, type[BaseModel]] = {}
    for name, field in model.model_fields.items():
        inner = model_in(field.annotation)
        if inner is not None and inner not in found.values():
            found[name] = inner
            found.update({k: v for k, v in _inner(inner).items() if v not in found.values()})
    return found
