"""Questions for sessions, and their answers: for a fault, along a path, or with the drills a coach names."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from kb.ask.matter import Matter
from kb.ask.session.course import Course
from kb.ask.session.fault_course import courses
from kb.ask.session.fitting import least_seconds
from kb.ask.session.records import Session
from kb.ask.session.sitting import lay_out, session_of
from kb.ask.session.tasks import Weigh
from kb.errors import NoAnswer
from kb.terms import DrillId, ItemId

if TYPE_CHECKING:
    from kb.ask.path import Path

__all__ = ["MOST_MINUTES", "NoSession", "fault_sessions", "has_room", "led_through", "named_session", "path_sessions"]

MOST_MINUTES = 240
"""The longest a session may be."""


class NoSession(NoAnswer):
    """Not even the least fits the minutes; the text says how many would do."""


def _unweighed(*_: object) -> None:
    return None


def led_through(course: Course, minutes: int, *, weigh: Weigh, teach: bool) -> tuple[Session, ...] | None:
    """Every sitting of a course as a session of so many minutes; None if one doesn't fit."""
    found: list[Session] = []
    gone: frozenset[int] = frozenset()
    for n in range(len(course.sittings)):
        made = session_of(lay_out(course, n, 60 * minutes, gone, weigh=weigh, teach=teach), minutes)
        if made is None:
            return None
        found.append(made[0])
        gone |= made[1]
    return tuple(found)


def has_room(course: Course, minutes: int) -> bool:
    """Whether the least of a course of one sitting fits: `named_session` has an answer; but told sooner."""
    laid = lay_out(course, 0, 60 * minutes, frozenset(), weigh=_unweighed, teach=False)
    return least_seconds(laid.offer) <= 60 * minutes


def fault_sessions(
    matter: Matter, minutes: int, *, weigh: Weigh = _unweighed, teach: bool = False
) -> tuple[Session, ...]:
    """The sessions that lead through a fault's chain, each of so many minutes.

    Raises NoChain when there is no chain, NoSession with the least minutes when even the least is too long.
    """

    def tried(minutes: int) -> tuple[Session, ...] | None:
        made = (
            led_through(course, minutes, weigh=weigh, teach=teach)
            for course in courses(matter, 60 * minutes, teach=teach)
        )
        return next((found for found in made if found is not None), None)

    return _found(tried, minutes)


def path_sessions(
    found: "Path",
    have: frozenset[ItemId],
    holds: frozenset[DrillId],
    minutes: int,
    *,
    weigh: Weigh = _unweighed,
    teach: bool = False,
) -> tuple[Session, ...]:
    """The sessions along a path, each of so many minutes and with two new drills at most.

    Raises NoSession with the least minutes when even the least is too long.
    """
    from kb.ask.session.path_course import path_courses  # late: the session for a fault needs no path

    def tried(minutes: int) -> tuple[Session, ...] | None:
        made = (
            led_through(course, minutes, weigh=weigh, teach=teach)
            for course in path_courses(found, have, holds, 60 * minutes, teach=teach)
        )
        return next((sessions for sessions in made if sessions is not None), None)

    return _found(tried, minutes)


def named_session(
    course: Course, minutes: int, *, weigh: Weigh = _unweighed, teach: bool = False
) -> tuple[Session, ...]:
    """The one session of drills that a coach names; NoSession with the least minutes when it is too long."""
    return _found(lambda some: led_through(course, some, weigh=weigh, teach=teach), minutes)


def _found(tried: Callable[[int], tuple[Session, ...] | None], minutes: int) -> tuple[Session, ...]:
    """The sessions of so many minutes; where there are none, NoSession with the least minutes that have some."""
    found = tried(minutes)
    if found is None:
        least = next((more for more in range(minutes + 1, MOST_MINUTES + 1) if tried(more) is not None), None)
        if least is None:
            raise NoSession(f"even {MOST_MINUTES} minutes are too short for this")
        raise NoSession(f"{minutes} min is too short: warm-up and the least that is still lawful take {least} min")
    return found
