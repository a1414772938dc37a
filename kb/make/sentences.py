"""What a model finds wrong, said in one clear sentence each, at the line where it stands.

pydantic gives a path and a type of error; people need a line, the field's name and what to write.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from pydantic import BaseModel

from kb.errors import Problem
from kb.make.fields import model_in
from kb.make.files import nearest

__all__ = ["place", "problems_of"]

Error = Mapping[str, Any]

_ORDINAL = {1: "st", 2: "nd", 3: "rd"}


def place(loc: tuple[int | str, ...], lines: Mapping[str, int]) -> str:
    """The longest dotted path of front matter along an error's location; what isn't in the file is passed over.

    >>> place(("faults", 1, "some", "cause"), {"faults": 3, "faults.1": 4})
    'faults.1'
    """
    path = ""
    for part in loc:
        longer = f"{path}.{part}" if path else str(part)
        if longer in lines:
            path = longer
    return path


def problems_of(
    errors: list[Any], model: type[BaseModel], file: str, lines: Mapping[str, int], refused: set[str]
) -> Iterator[Problem]:
    """A problem for each error of a model, save where one was already reported for the same value."""
    for error in errors:
        path = place(error["loc"], lines)
        if any(path == gone or path.startswith(f"{gone}.") for gone in refused):
            continue
        code, message, help_ = _said(error, model, path)
        yield Problem(file=file, line=lines.get(path, 1), code=code, message=message, help=help_)


def _said(error: Error, model: type[BaseModel], path: str) -> tuple[str, str, str]:
    """Code, sentence and help for one error."""
    kind, value, context = error["type"], error["input"], error.get("ctx", {})
    name = _called(path)
    last = str(error["loc"][-1]) if error["loc"] else ""
    if kind == "missing":
        says = _fields(model, error["loc"][:-1]).get(last, "")
        return "missing-field", f"{_called(path, last)} is missing.", f"It says {says}." if says else ""
    if kind == "extra_forbidden":
        return "unknown-field", *_no_field(model, error["loc"], last)
    if kind == "literal_error":
        return "bad-value", *_no_word(name, value, context["expected"])
    if kind in _TYPES:
        return "wrong-type", f"{name} must be {_TYPES[kind][0]}, not {_kind(value)}.", _TYPES[kind][1]
    if kind in ("too_short", "too_long"):
        return "bad-value", _length(name, context, kind == "too_short"), ""
    if kind == "string_pattern_mismatch":
        return "bad-value", *_no_pattern(name, str(value), context["pattern"])
    if kind == "string_too_long":
        return "bad-value", f"{name} is longer than {context['max_length']} characters.", "Shorten it."
    if kind == "greater_than_equal":
        return "bad-value", f"{name} must be {context['ge']} or more, not {value}.", ""
    if kind == "less_than_equal":
        return "bad-value", f"{name} must be {context['le']} or less, not {value}.", ""
    if "-" in kind:  # one of our own, whose sentence lacks only the field's name
        return kind, f"{name} {error['msg']}", ""
    return "bad-value", f"{name} can't be taken: {error['msg']}.", ""


_TYPES = {
    "string_type": ("text", "Put it in quotation marks."),
    "int_type": ("a whole number", "Write plain digits; durations in seconds."),
    "int_from_float": ("a whole number", "Write plain digits; durations in seconds."),
    "float_type": ("a number", "Write plain digits."),
    "bool_type": ("`yes` or `no`", "Write it without quotation marks."),
    "list_type": ("a list", "Put it in square brackets: [first, second]."),
    "dict_type": ("a map", "Write it as {field: value}."),
    "model_type": ("a map", "Write it as {field: value}."),
    "model_attributes_type": ("a map", "Write it as {field: value}."),
}


def _called(path: str, missing: str = "") -> str:
    """A path as people say it: the field, and which item of a list it is in.

    >>> _called("causes.1.kind"), _called("reach.0"), _called("causes.1", "text")
    ('`kind` (2nd of `causes`)', 'The 1st of `reach`', '`text` (2nd of `causes`)')
    """
    parts = [*path.split("."), missing] if missing else path.split(".")
    parts = [part for part in parts if part]
    if not parts:
        return "The front matter"
    if parts[-1].isdigit() and len(parts) > 1:
        owner = next((part for part in reversed(parts) if not part.isdigit()), "")
        return f"The {_ordinal(parts[-1])} of `{owner}`"
    if len(parts) > 2 and parts[-2].isdigit():
        return f"`{parts[-1]}` ({_ordinal(parts[-2])} of `{parts[-3]}`)"
    return f"`{parts[-1]}` (of `{parts[-2]}`)" if len(parts) > 1 else f"`{parts[-1]}`"


def _ordinal(index: str) -> str:
    number = int(index) + 1
    return f"{number}{'th' if 10 < number % 100 < 14 else _ORDINAL.get(number % 10, 'th')}"


def _fields(model: type[BaseModel], loc: tuple[int | str, ...]) -> dict[str, str]:
    """The fields, with what each says, of the model that an error's location leads to."""
    for part in loc:
        field = next((f for name, f in model.model_fields.items() if part in (name, f.alias)), None)
        inner = model_in(field.annotation) if field else None
        model = inner or model
    return {field.alias or name: field.description or "" for name, field in model.model_fields.items()}


def _no_field(model: type[BaseModel], loc: tuple[int | str, ...], name: str) -> tuple[str, str]:
    known = tuple(_fields(model, loc[:-1]))
    owner = next((str(part) for part in reversed(loc[:-1]) if str(part) in _all_fields(model)), "")
    message = f"`{_short(name)}` is no field of `{owner}`." if owner else f"`{_short(name)}` is no field of this entry."
    return message, nearest(name, known) or f"The fields are {', '.join(known)}."


def _all_fields(model: type[BaseModel]) -> set[str]:
    return {field.alias or name for name, field in model.model_fields.items() if model_in(field.annotation)} | {
        name
        for field in model.model_fields.values()
        if (inner := model_in(field.annotation)) is not None
        for name in _all_fields(inner)
    }


def _no_word(name: str, value: Any, expected: str) -> tuple[str, str]:
    words = expected.replace("'", "").replace(" or ", ", ").split(", ")
    said = f"`{_short(value)}`" if isinstance(value, str) else _kind(value)
    listed = f"{', '.join(words[:-1])} or {words[-1]}" if len(words) > 1 else f"`{words[0]}` or a list"
    return f"{name} can't be {said}: it is {listed}.", nearest(str(value), words)


def _no_pattern(name: str, value: str, pattern: str) -> tuple[str, str]:
    if not value.strip():
        return f"{name} is empty.", "Write something, or leave the field out."
    if "a-z" in pattern:
        return f"{name} can't be `{_short(value)}`: an id is small letters, digits and single hyphens.", ""
    return f"{name} must be one line, without space around it.", ""


def _length(name: str, context: Error, short: bool) -> str:
    least, most, actual = context.get("min_length"), context.get("max_length"), context["actual_length"]
    if short and least == 1:
        return f"{name} is empty: it needs at least one."
    wanted = f"at least {least}" if short else f"at most {most}"
    has = actual if isinstance(actual, int) else "more"
    return f"{name} needs {wanted} items, and has {has}."


def _kind(value: Any) -> str:
    """What a value of front matter is, for people."""
    if isinstance(value, bool):
        return "`yes` or `no`"
    if isinstance(value, (int, float)):
        return f"the number {value}"
    if isinstance(value, str):
        return f"the text `{_short(value)}`"
    return "a list" if isinstance(value, list) else "a map"


def _short(value: str) -> str:
    return value if len(value) <= 40 else f"{value[:37]}..."
