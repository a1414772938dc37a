"""A class file's fields: what each may hold, and what holds if it is left out."""

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, StringConstraints

from kb.ask.class_.people import NEW_AT_ONCE, WARM_UP_S
from kb.ask.cleared import CLEARED_SAYS
from kb.make.fields import Entry, Name

__all__ = ["ENOUGH", "ClassModel", "LifterModel"]

ENOUGH = "plenty"
"""Said for what there is enough of for all."""


def _as_list(said: Any) -> Any:
    """One name as a list of one."""
    return [said] if isinstance(said, str) else said


class LifterModel(Entry):
    """One who comes."""

    name: Annotated[str, StringConstraints(pattern=r"^\S(.*\S)?$", max_length=40)] = Field(description="a first name")
    lift: Name | None = Field(default=None, description="a lift, where it isn't the class's")
    fault: Name | None = Field(default=None, description="what was seen: a fault")
    cause: Name | None = Field(default=None, description="why it happens: a cause of the fault")
    holds: list[Name] | None = Field(default=None, description="drills held already; [] for who is new")
    weight_kg: float | None = Field(default=None, gt=0, le=500, description="the day's weight, kg")
    today: Annotated[list[Name], BeforeValidator(_as_list)] = Field(
        default_factory=list, max_length=3, description="what they do in place of the class's `today`"
    )
    to: Name | None = Field(
        default=None, description="the part of the lift they end in, with nothing caught deeper, such as power-clean"
    )
    cleared: str | None = Field(
        default=None, max_length=80, description=f"who cleared them: with it they are {CLEARED_SAYS}"
    )
    said: str | None = Field(default=None, max_length=300, description="what else there is to say of them, in words")
    bar: Literal["light", "racked"] | None = Field(
        default=None, description="`light` for who stays with a light bar, `racked` for who can't clean what they jerk"
    )


class ClassModel(Entry):
    """A class file."""

    name: Name = Field(default="Class", description="what the class is called")
    lift: Name = Field(description="the lift most work on")
    minutes: int = Field(ge=1, le=300, description="how long the class is, minutes")
    coaches: int = Field(default=1, ge=1, le=20, description="how many coaches there are")
    helpers: int = Field(default=0, ge=0, le=20, description="how many help who don't lift, such as a teacher")
    warm_up_minutes: int = Field(default=WARM_UP_S // 60, ge=0, le=60, description="the common warm-up, minutes")
    most_wait_s: int | None = Field(default=None, ge=0, le=3600, description="the longest anyone waits, seconds")
    bar_kg: float = Field(default=20.0, gt=0, le=50, description="what a bar weighs, kg")
    kit: Name = Field(default="hall", description="a kit: of what isn't counted there is enough")
    gear: dict[str, Any] = Field(default_factory=dict, description="things and how many there are, or `plenty`")
    to: Name | None = Field(None, description="the part of the lift that learners go to, such as hang-power-snatch")
    today: Annotated[list[Name], BeforeValidator(_as_list)] = Field(
        default_factory=list,
        min_length=1,
        max_length=3,
        description="one to three drills that every learner does today",
    )
    new: int = Field(NEW_AT_ONCE, ge=1, le=6, description="how many new drills each learner is shown")
    known: list[Name] = Field(default_factory=list, description="drills everyone has been shown before")
    lifters: list[LifterModel] = Field(min_length=1, max_length=80, description="who comes")
