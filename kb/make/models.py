"""The five kinds of front matter as models: the one list of fields, from which schema and reference are made.

They say what may be written, not what makes sense together: that is for the rules in kb/make/structure.
"""

from typing import Annotated, Any, Literal

from pydantic import Discriminator, Field, Tag

from kb.feet import Feet
from kb.make.fields import (
    DISTINCT,
    Aid,
    Caution,
    Entry,
    Id,
    Ids,
    Loads,
    Name,
    Names,
    OneOrSome,
    Pair,
    Part,
    Reach,
    TargetPosition,
    Text,
    WordOfCatch,
    WordOfLoad,
    WordOfSpeed,
    WordOfStage,
)
from kb.make.files import Kind
from kb.make.limits import LIMITS
from kb.make.posture_models import PositionModel, PostureModel
from kb.terms import CauseKind

__all__ = ["MODELS", "DrillModel", "EquipmentModel", "FaultModel", "LiftModel", "PositionModel"]


def _within(limit: str, default: int, says: str) -> Any:
    """A number whose limits a rule judges; they stand in the schema, so that an editor can tell early."""
    least, most = LIMITS[limit]
    return Field(default, description=says, json_schema_extra={"minimum": least, "maximum": most})


def _some(says: str) -> Any:
    return Field(default_factory=list, description=says)


def _usual(model: type[Entry], says: str) -> Any:
    return Field(default_factory=model, description=says)


class StandardModel(Entry):
    """What must be seen before moving on."""

    count: int = Field(ge=1, description="how many of them must be right")
    of: int = Field(ge=1, description="how many are done")
    seen: Text = Field(description="what is seen in each that is right, in countable words")


class TimedModel(Entry):
    """A point of a lift's timeline."""

    at: Id = Field(description="the point's name; lifts may share it")
    position: Id = Field(description="the position taken there")


class LiftModel(Entry):
    """A lift."""

    name: Name = Field(description="what it is called")
    also: Names = _some("other names, none shared with another lift")
    parts: Ids = _some("the lifts it is made of, in order; its timeline is then theirs")
    timeline: list[TimedModel] = _some("its points in order, each with its position; none if it has parts")
    drill: Id = Field(description="the drill that is the whole lift")
    standard: StandardModel = Field(description="what must be seen before it counts as learnt")
    checkpoints: Annotated[Ids, Field(max_length=14)] = _some(
        "drills whose standards place a lifter, simplest first; 8 to 14 do, and `place` asks for them"
    )


class ShowsAtModel(Entry):
    """The least dials at which a fault shows; a dial left out asks for nothing."""

    speed: WordOfSpeed = Field("held", description="the least speed")
    load: WordOfLoad = Field("none", description="the least load")
    catch: WordOfCatch = Field("none", description="the least depth of catch")


class CauseModel(Entry):
    """Why a fault happens."""

    id: Id = Field(description="the cause's id, unique within its fault")
    kind: CauseKind = Field(description="what kind of cause it is")
    earlier: Id | None = Field(None, description="the fault that makes this one; for kind `earlier`, and only then")
    shows_at: ShowsAtModel = _usual(ShowsAtModel, "higher dials at which the fault shows for this cause")
    text: Text = Field(description="why it happens and how it shows")
    throughout: Text | None = Field(None, description="what to set up, change or ask for in every drill for this cause")


class TellModel(Entry):
    """A quick check that separates causes."""

    do: Text = Field(description="what to have the lifter do")
    look: Text = Field(description="what to look at, as a question that is answered yes or no")
    seconds: int = Field(ge=1, le=600, description="how long it takes, s")
    drill: Id | None = Field(None, description="the drill that is used, if one is")
    yes: Ids = _some("the causes that a yes points to")
    no: Ids = _some("the causes that a no points to")


class FaultModel(Entry):
    """A fault: something seen."""

    name: Name = Field(description="a coach's plain words for it")
    also: Names = _some("other ways in which coaches and lifters say it")
    lifts: Annotated[Ids, Field(min_length=1)] = Field(description="the lifts it is seen in")
    phases: Annotated[list[Pair], Field(min_length=1), DISTINCT] = Field(
        description="the stretches of the timeline in which it shows, as narrow as possible"
    )
    shows_at: ShowsAtModel = _usual(ShowsAtModel, "the least dials at which it shows")
    view: Literal["side", "front", "back"] = Field("side", description="where to stand to see it")
    look_alikes: Ids = _some("faults it is mistaken for")
    gone: Text | None = Field(
        None, description="what one repetition without it shows; said after the standard of each drill that tests it"
    )
    causes: Annotated[list[CauseModel], Field(min_length=1)] = Field(description="why it happens, commonest first")
    tells: list[TellModel] = _some("quick checks that separate the causes")
    posture: PostureModel | None = Field(None, description="how it looks, drawn beside the position as it should be")


class CapsModel(Entry):
    """The highest each dial can be with a stand-in; a dial left out isn't capped."""

    speed: WordOfSpeed = Field("full", description="the highest speed")
    load: WordOfLoad = Field("working", description="the highest load")
    catch: WordOfCatch = Field("full", description="the deepest catch")


class StandInModel(Entry):
    """An item that can serve for another."""

    item: Id = Field(description="the equipment that serves instead")
    lost: Text = Field(description="what is lost by it")
    caps: CapsModel = _usual(CapsModel, "how high each dial can then be")


class EquipmentModel(Entry):
    """A piece of equipment; space and people are equipment too."""

    name: Name = Field(description="what it is called")
    also: Names = _some("other names, none shared with other equipment")
    kits: Ids = _some("the kits it belongs to; `full`, which is everything, isn't named")
    stand_ins: Annotated[list[StandInModel], DISTINCT] = _some("what can serve for it, one hop, never chained")


class AddressedModel(Entry):
    """A fault that a drill addresses, for one cause."""

    fault: Id = Field(description="the fault addressed")
    cause: Id | None = Field(None, description="the cause acted on; left out, the fault whatever its cause")


def _fault_or_cause(value: Any) -> str:
    return "some" if isinstance(value, (dict, AddressedModel)) else "one"


AddressedField = Annotated[
    Annotated[Id, Tag("one")] | Annotated[AddressedModel, Tag("some")], Discriminator(_fault_or_cause)
]


class RegressionModel(Entry):
    """An easier version of a drill."""

    drill: Id = Field(description="the easier drill")
    eases: Text = Field(description="what it eases")


class DoseModel(Entry):
    """How much is done."""

    rounds: int = _within("rounds", 1, "rounds, or intervals")
    reps: int = _within("reps", 0, "repetitions a round and side; 0 for a hold alone")
    tempo: Annotated[list[int], Field(min_length=4, max_length=4)] | None = Field(
        None, description="[eccentric, pause, concentric, pause], whole seconds; without it a repetition takes 4 s"
    )
    hold_s: int = _within("hold_s", 0, "the hold after the repetitions, a round and side, s")
    sides: int = _within("sides", 1, "2 if it is done on each side")
    rest_s: int = _within("rest_s", 0, "rest between rounds, s")
    good: int = _within("good", 0, "repetitions that must count, a side, in sets of at most `reps`; then no `rounds`")
    success: int = _within("success", 80, "tries expected to count, per cent; only with `good`")
    every_s: int = _within("every_s", 0, "intervals: a round starts every so many seconds; then no `rest_s`, s")


class LoadFromModel(Entry):
    """The load as a share of a lifter's best."""

    lift: Id = Field(description="the lift whose best is meant")
    percent: Annotated[list[int], Field(min_length=2, max_length=2)] = Field(description="least and most, per cent")


class DrillModel(Entry):
    """A drill: something done."""

    name: Name = Field(description="what it is called")
    also: Names = _some("other names and old ids, none shared with another drill of the lift")
    lifts: Annotated[Ids, Field(min_length=1)] = Field(description="the lifts it serves")
    stage: WordOfStage = Field(description="how much of the lift it puts together")
    target_position: TargetPosition | None = Field(None, description="the posture it is for; or a map by lift")
    reach: Reach | None = Field(None, description="first and last point of the timeline it covers; or a map by lift")
    leaves_out: Ids = _some("points inside the reach that it doesn't visit")
    speed: WordOfSpeed | None = Field(None, description="how fast it is done")
    load: Loads | None = Field(None, description="what is in the hands: a value, or the least and the most")
    catch: WordOfCatch | None = Field(None, description="the depth of receiving posture reached")
    feet: Feet = Field("still", description="what the feet do: stay on the floor, step without a bang, or land")
    aid: Aid | None = Field(None, description="`free`, or a list of what helps: equipment or `hand`")
    faults: Annotated[list[AddressedField], DISTINCT] = _some(
        "faults it addresses, each with the cause acted on, or bare for the fault whatever its cause"
    )
    prerequisites: Annotated[list[OneOrSome], DISTINCT] = _some(
        "drills it is unsafe or meaningless without; an inner list means any one of"
    )
    made_of: Ids = _some("a complex: the drills done in turn, which are its prerequisites too")
    regressions: Annotated[list[RegressionModel], DISTINCT] = _some("easier versions")
    equipment: Ids = _some("what its heaviest load needs")
    opens: Annotated[list[Part], DISTINCT] = _some("preparation only: what it opens")
    for_positions: Ids = Field(default_factory=list, alias="for", description="preparation only: positions it is for")
    dose: DoseModel = Field(description="how much is done")
    set_up_s: int = _within("set_up_s", 15, "setting it up, beside the dose, s")
    teach_s: int = _within("teach_s", 60, "showing it the first time, s")
    load_from: LoadFromModel | None = Field(None, description="the load as a share of a lifter's best")
    standard: StandardModel = Field(description="what must be seen before moving on")
    cautions: Annotated[list[Caution], DISTINCT] = _some("what to take care of")
    bridge: bool = Field(True, description="`no`: never used merely as a stepping stone")
    turn_up: Text | None = Field(None, description="how the same drill is made harder without more weight")
    suits: Text | None = Field(None, description="whom it suits best, in a sentence")
    not_for: Text | None = Field(None, description="whom or what it isn't for, in a sentence")


MODELS: dict[Kind, type[Entry]] = {
    "lift": LiftModel,
    "position": PositionModel,
    "fault": FaultModel,
    "equipment": EquipmentModel,
    "drill": DrillModel,
}
