"""A calendar file of what is planned: iCalendar text as RFC 5545 has it, to be opened by any calendar.

Times are as the start has them: without a zone they float (ten o'clock wherever the calendar is), which suits a
session in a gym; with one they are put as UTC, so that no table of zones is needed. The same events give the same
text, and an event keeps its UID, so that a plan made anew replaces the old one instead of doubling it.

References
----------
.. [1] RFC 5545, Internet Calendaring and Scheduling Core Object Specification (2009): 3.1 content lines and folding,
   3.3.5 date-time, 3.3.6 duration, 3.3.11 text, 3.6.1 events, 3.8.4.7 UID.
"""

from collections.abc import Iterator, Sequence
from datetime import UTC, datetime
from typing import NamedTuple

__all__ = ["Event", "calendar", "duration", "escaped", "folded", "moment"]

OCTETS = 75
"""The longest content line, octets without its end (RFC 5545 3.1)."""

PRODUCT = "-//drillpath//plan//EN"


class Event(NamedTuple):
    """Something at a time. `uid` must be the same whenever the same event is written, and no other's.

    `start` floats where it has no zone; `seconds` is how long it lasts; `text` may have several lines.
    """

    uid: str
    start: datetime
    seconds: int
    title: str
    text: str = ""


def escaped(text: str) -> str:
    r"""A text as a value: backslash, comma, semicolon and line end escaped, what no value may hold left out.

    >>> escaped("5 x 3, then hold; up\n" + chr(92))
    '5 x 3\\, then hold\\; up\\n\\\\'

    References
    ----------
    RFC 5545 3.3.11; control characters but the tab are excluded by 3.1.
    """
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    for sign in ("\\", ";", ","):
        text = text.replace(sign, f"\\{sign}")
    text = text.replace("\n", "\\n")
    kept = (letter for letter in text if letter == "\t" or not (letter < " " or "\x7f" <= letter <= "\x9f"))
    # halves of letters can't be written at all
    return "".join(kept).encode("utf-8", "ignore").decode()


def folded(line: str) -> str:
    r"""A content line with its end, folded so that no line is over 75 octets and no letter is split.

    >>> folded("SUMMARY:short")
    'SUMMARY:short\r\n'

    References
    ----------
    RFC 5545 3.1: a long line is split by CRLF and one space; octets are counted, not letters.
    """
    parts: list[str] = []
    held: list[str] = []
    octets = 0
    for letter in line:
        size = len(letter.encode())
        if octets + size > OCTETS:
            parts.append("".join(held))
            # the space that begins a further line is one of its octets
            held, octets = [], 1
        held.append(letter)
        octets += size
    return "\r\n ".join([*parts, "".join(held)]) + "\r\n"


def moment(when: datetime) -> str:
    """A date and time: as it is where it has no zone, else as UTC (RFC 5545 3.3.5, forms 1 and 2).

    >>> moment(datetime(1997, 7, 14, 13, 30)), moment(datetime(1997, 7, 14, 17, 30, tzinfo=UTC))
    ('19970714T133000', '19970714T173000Z')
    """
    if when.tzinfo is not None:
        when = when.astimezone(UTC)
    date = f"{when.year:04d}{when.month:02d}{when.day:02d}"
    return f"{date}T{when.hour:02d}{when.minute:02d}{when.second:02d}{'Z' if when.tzinfo is not None else ''}"


def duration(seconds: int) -> str:
    """A length of time (RFC 5545 3.3.6): days, hours, minutes and seconds, those in between never left out.

    Raises ValueError for less than nothing.

    >>> duration(1314020), duration(2700), duration(3601), duration(0)
    ('P15DT5H0M20S', 'PT45M', 'PT1H0M1S', 'PT0S')
    """
    if seconds < 0:
        raise ValueError(f"a duration can't be {seconds} s")
    days, rest = divmod(seconds, 86400)
    hours, rest = divmod(rest, 3600)
    minutes, rest = divmod(rest, 60)
    units = [(hours, "H"), (minutes, "M"), (rest, "S")]
    while units and not units[0][0]:
        del units[0]
    while units and not units[-1][0]:
        del units[-1]
    time = "".join(f"{count}{unit}" for count, unit in units)
    if not days and not time:
        return "PT0S"
    return f"P{f'{days}D' if days else ''}{f'T{time}' if time else ''}"


def _event(event: Event, stamp: datetime) -> Iterator[str]:
    yield "BEGIN:VEVENT"
    yield f"UID:{escaped(event.uid)}"
    yield f"DTSTAMP:{moment(stamp.astimezone(UTC))}"
    yield f"DTSTART:{moment(event.start)}"
    yield f"DURATION:{duration(event.seconds)}"
    yield f"SUMMARY:{escaped(event.title)}"
    if event.text:
        yield f"DESCRIPTION:{escaped(event.text)}"
    yield "END:VEVENT"


def calendar(events: Sequence[Event], name: str, stamp: datetime) -> str:
    """Events as the text of an `.ics` file, lines ended by CRLF; write it as UTF-8, ends of lines as they are.

    `name` is what calendars show it under; `stamp` when it was made (without a zone it is taken as this machine's
    time). Raises ValueError for an event without a UID, two with the same, or a negative length.
    """
    uids = [event.uid for event in events]
    if not all(uids) or len(set(uids)) < len(uids):
        raise ValueError("each event needs a UID of its own")
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:{PRODUCT}", "CALSCALE:GREGORIAN", f"NAME:{escaped(name)}"]
    # what most calendars read as the name, older than NAME (RFC 7986 5.1)
    lines.append(f"X-WR-CALNAME:{escaped(name)}")
    for event in events:
        lines += _event(event, stamp)
    lines.append("END:VCALENDAR")
    return "".join(folded(line) for line in lines)
