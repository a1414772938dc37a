"""What the other causes of a fault call for: the chain of each, in the same room, beside the one asked for."""

from typing import NamedTuple

from kb.ask.chain import Chain, NoChain, chain
from kb.ask.matter import Matter
from kb.errors import BadInput
from kb.terms import Cause, Fault

__all__ = ["Instead", "for_fault", "instead"]


class Instead(NamedTuple):
    """Another cause and its chain; `none` says why it has none here."""

    cause: Cause
    chain: Chain | None
    none: str = ""


def instead(matter: Matter) -> tuple[Instead, ...]:
    """The chains for a fault's other causes, commonest first, with all else as it was asked."""
    return tuple(_for(matter, cause) for cause in matter.fault.causes if cause.id != matter.cause.id)


def for_fault(matter: Matter, other: Fault) -> Instead:
    """The chain for another fault of the lift, for its commonest cause, with all else as it was asked."""
    return _for(matter._replace(question=matter.question._replace(fault=other.id, seconds=None)), other.causes[0])


def _for(matter: Matter, cause: Cause) -> Instead:
    try:
        return Instead(cause, chain(matter.shelf, matter.question._replace(cause=cause.id, routes=1)))
    except (NoChain, BadInput) as none:
        return Instead(cause, None, str(none))
