"""The kinds of value that front matter is made of: ids, text, words of a scale, pairs, lists without repeats.

Where a field takes two forms (a value, or a map by lift) the form is told by its shape, so that a
mistake is reported once and in the terms of the form that was meant.
"""

from collections.abc import Callable
from typing import Annotated, Any, Literal, get_args

from pydantic import (
    BaseModel,
    ConfigDict,
    Discriminator,
    Field,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
    StringConstraints,
    Tag,
)
from pydantic_core import CoreSchema, PydanticCustomError
from pydantic_core.core_schema import no_info_after_validator_function

__all__ = [
    "DISTINCT",
    "Aid",
    "Caution",
    "Entry",
    "Id",
    "Ids",
    "Loads",
    "Name",
    "Names",
    "OneOrSome",
    "Pair",
    "Part",
    "Reach",
    "TargetPosition",
    "Text",
    "WordOfCatch",
    "WordOfLoad",
    "WordOfSpeed",
    "WordOfStage",
    "distinct",
    "model_in",
]

WordOfStage = Literal["prepare", "position", "segment", "join", "whole", "finish"]
WordOfSpeed = Literal["held", "slow", "paused", "full"]
WordOfLoad = Literal["none", "stick", "light", "working"]
WordOfCatch = Literal["none", "standing", "power", "full"]
Part = Literal[
    "ankle",
    "knee",
    "hip",
    "hamstring",
    "adductor",
    "upper-back",
    "shoulder",
    "lat",
    "elbow",
    "wrist",
    "calf",
    "thumb",
]
"""What preparation can open."""

Caution = Literal[
    "shoulder",
    "wrist",
    "elbow",
    "back",
    "knee",
    "hip",
    "ankle",
    "neck",
    "head-clearance",
    "breath",
    "drop-zone",
]


class Entry(BaseModel):
    """What every model of front matter shares: nothing is converted, and no field is taken that it lacks."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True, hide_input_in_errors=True, defer_build=True)


def distinct(values: list[Any]) -> list[Any]:
    """The list as it is; refused if it says the same thing twice.

    What names a drill or an item is the same thing if the names are the same.
    """
    seen: list[Any] = []
    for value in values:
        name = getattr(value, "drill", None) or getattr(value, "item", None) or value
        if name in seen:
            said = f"`{name}`" if isinstance(name, str) else "the same thing"
            raise PydanticCustomError("repeated-value", "says {said} twice.", {"said": said})
        seen.append(name)
    return values


class _Distinct:
    """Marks a list as one without repeats, for reading and for the schema."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return no_info_after_validator_function(distinct, handler(source))

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        return {**handler(schema), "uniqueItems": True}


DISTINCT = _Distinct()
"""Put beside a list's type: it says nothing twice."""


def model_in(annotation: Any) -> type[BaseModel] | None:
    """The first model that a field's type mentions."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    return next((model for part in get_args(annotation) if (model := model_in(part))), None)


def _shape(plain: str, other: str, kind: type) -> Callable[[Any], str]:
    return lambda value: other if isinstance(value, (kind, BaseModel)) else plain


Id = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9]*(-[a-z0-9]+)*$")]
Text = Annotated[str, StringConstraints(pattern=r"\S")]
Name = Annotated[str, StringConstraints(pattern=r"^\S(.*\S)?$", max_length=120)]
Ids = Annotated[list[Id], DISTINCT]
Names = Annotated[list[Name], DISTINCT]
Pair = Annotated[list[Id], Field(min_length=2, max_length=2)]
Loads = Annotated[
    Annotated[WordOfLoad, Tag("one")]
    | Annotated[Annotated[list[WordOfLoad], Field(min_length=2, max_length=2)], Tag("some")],
    Discriminator(_shape("one", "some", list)),
]
Aid = Annotated[
    Annotated[Literal["free"], Tag("one")] | Annotated[Annotated[Ids, Field(min_length=1)], Tag("some")],
    Discriminator(_shape("one", "some", list)),
]
OneOrSome = Annotated[
    Annotated[Id, Tag("one")] | Annotated[Annotated[Ids, Field(min_length=1)], Tag("some")],
    Discriminator(_shape("one", "some", list)),
]
_by_lift = _shape("plain", "map", dict)
TargetPosition = Annotated[
    Annotated[Id, Tag("plain")] | Annotated[Annotated[dict[Id, Id], Field(min_length=1)], Tag("map")],
    Discriminator(_by_lift),
]
Reach = Annotated[
    Annotated[Pair, Tag("plain")] | Annotated[Annotated[dict[Id, Pair], Field(min_length=1)], Tag("map")],
    Discriminator(_by_lift),
]
