"""Postures in front matter: a position's joint angles, and how a fault's differ from them."""

from typing import Any, Literal

from pydantic import Field, field_validator, model_validator
from pydantic_core import PydanticCustomError

from kb.make.fields import Entry, Id, Name, Names

__all__ = ["PositionModel", "PostureModel"]

PlaceOfBar = Literal["floor", "below-knee", "knee", "thigh", "hip", "shoulders", "neck", "overhead"]
PlaceOrHands = Literal[PlaceOfBar, "hands"]
Contact = Literal["feet-flat", "toes", "split"]


def possible_angle(value: float | None) -> float | None:
    """The angle as it is; refused if no joint can take it."""
    if value is not None and not -180 <= value <= 220:
        raise PydanticCustomError("bad-value", "is no joint angle in degrees.")
    return value


class AnglesModel(Entry):
    """Joint angles, degrees from the anatomical zero, flexion positive."""

    ankle: float | None = Field(None, description="dorsiflexion, degrees")
    knee: float | None = Field(None, description="flexion, degrees")
    hip: float | None = Field(None, description="flexion, degrees")
    front_ankle: float | None = Field(None, description="dorsiflexion of the front ankle in a split, degrees")
    front_knee: float | None = Field(None, description="flexion of the front knee in a split, degrees")
    front_hip: float | None = Field(None, description="flexion of the front hip in a split, degrees")
    back_ankle: float | None = Field(None, description="dorsiflexion of the back ankle in a split, degrees")
    back_knee: float | None = Field(None, description="flexion of the back knee in a split, degrees")
    back_hip: float | None = Field(None, description="flexion of the back hip in a split, degrees")
    trunk: float = Field(description="lean from the vertical, forward positive, degrees")
    shoulder: float = Field(description="flexion, degrees")
    elbow: float = Field(description="flexion, degrees")
    wrist: float = Field(description="extension, degrees")

    _possible = field_validator("*")(possible_angle)

    @model_validator(mode="after")
    def _one_pair_of_legs(self) -> "AnglesModel":
        together = (self.ankle, self.knee, self.hip)
        split = (self.front_ankle, self.front_knee, self.front_hip, self.back_ankle, self.back_knee, self.back_hip)
        if (None in together) == (None in split) or any(a is not None for a in together) == any(
            a is not None for a in split
        ):
            said = "needs ankle, knee and hip, or in a split front_ankle to back_hip, all six, and not both."
            raise PydanticCustomError("bad-value", "{said}", {"said": said})
        return self


class PositionModel(Entry):
    """A posture."""

    name: Name = Field(description="what it is called")
    also: Names = Field(default_factory=list, description="other names, none shared with another position")
    angles: AnglesModel = Field(description="joint angles, from which the figure is drawn")
    bar: PlaceOfBar = Field(description="where the bar is")
    contact: Contact = Field(description="what of the feet is on the floor")


class OtherAnglesModel(Entry):
    """The angles that differ from a position's own, degrees."""

    ankle: float | None = Field(None, description="dorsiflexion, degrees")
    knee: float | None = Field(None, description="flexion, degrees")
    hip: float | None = Field(None, description="flexion, degrees")
    front_ankle: float | None = Field(None, description="dorsiflexion of the front ankle in a split, degrees")
    front_knee: float | None = Field(None, description="flexion of the front knee in a split, degrees")
    front_hip: float | None = Field(None, description="flexion of the front hip in a split, degrees")
    back_ankle: float | None = Field(None, description="dorsiflexion of the back ankle in a split, degrees")
    back_knee: float | None = Field(None, description="flexion of the back knee in a split, degrees")
    back_hip: float | None = Field(None, description="flexion of the back hip in a split, degrees")
    trunk: float | None = Field(None, description="lean of the trunk; left out, what the legs make it, degrees")
    shoulder: float | None = Field(None, description="flexion, degrees")
    elbow: float | None = Field(None, description="flexion, degrees")
    wrist: float | None = Field(None, description="extension, degrees")
    back: float | None = Field(
        None, ge=-120, le=120, description="how far the back is rounded (hollow: negative), degrees"
    )

    _possible = field_validator("*")(possible_angle)


def _usual(model: type[Entry], says: str) -> Any:
    return Field(default_factory=model, description=says)


class PostureModel(Entry):
    """How a fault looks, where a posture shows it from the side."""

    position: Id = Field(description="the position as it should be")
    angles: OtherAnglesModel = _usual(OtherAnglesModel, "the joint angles that differ, degrees")
    at: PlaceOrHands | None = Field(None, description="where the bar is; `hands`: held off the body")
    contact: Contact | None = Field(None, description="what of the feet is on the floor, if something else")
