"""Calendar files: lines as the standard has them, and read back whole by the reference library."""

from datetime import UTC, datetime, timedelta, timezone

import icalendar
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kb.show.calendar import Event, calendar, duration, escaped, folded, moment

STAMP = datetime(2026, 1, 2, 3, 4, 5, tzinfo=UTC)

TEXTS = st.text(
    st.characters(exclude_categories=["Cs", "Cc"], include_characters=["\n", "\t", ";", ",", "\\", "é", "深", "🏋"]),
    max_size=200,
)
"""What a title or a text may hold: every letter, tabs and line ends, no other control character."""

MOMENTS = st.datetimes(min_value=datetime(1970, 1, 1), max_value=datetime(2100, 1, 1)).map(
    lambda when: when.replace(microsecond=0)
)

EVENTS = st.lists(
    st.builds(
        Event,
        uid=st.text("abcdefghijklmnopqrstuvwxyz0123456789-@.", min_size=1, max_size=90),
        start=MOMENTS,
        seconds=st.integers(0, 10**7),
        title=TEXTS,
        text=TEXTS,
    ),
    max_size=4,
    unique_by=lambda event: event.uid,
)


def events_of(text: str) -> list[icalendar.Event]:
    """What the reference library reads."""
    return list(icalendar.Calendar.from_ical(text.encode()).walk("VEVENT"))


def unfolded(text: str) -> list[str]:
    """Content lines as the standard joins them: CRLF and one space or tab are taken out (RFC 5545 3.1)."""
    return text.replace("\r\n ", "").replace("\r\n\t", "").split("\r\n")


@settings(max_examples=60, deadline=None)
@given(EVENTS, TEXTS)
def test_the_reference_library_reads_back_what_was_put(events: list[Event], name: str) -> None:
    """Every event with its UID, start, length, title and text."""
    read = events_of(calendar(events, name, STAMP))
    assert [str(each["UID"]) for each in read] == [event.uid for event in events]
    for each, event in zip(read, events, strict=True):
        assert each["DTSTART"].dt == event.start
        assert each["DURATION"].dt == timedelta(seconds=event.seconds)
        assert each["DTSTAMP"].dt == STAMP
        assert str(each["SUMMARY"]) == event.title
        assert str(each.get("DESCRIPTION", "")) == event.text


@settings(max_examples=60, deadline=None)
@given(EVENTS, TEXTS)
def test_lines_are_short_whole_and_ended_right(events: list[Event], name: str) -> None:
    """12.05: content lines end CRLF and have at most 75 octets without it; octets, never splitting a UTF-8 letter."""
    data = calendar(events, name, STAMP).encode()
    assert data.endswith(b"END:VCALENDAR\r\n")
    lines = data.split(b"\r\n")
    assert all(len(line) <= 75 for line in lines)
    assert all(b"\n" not in line and b"\r" not in line for line in lines)
    for line in lines:
        line.decode()  # a split letter would raise
    assert data.count(b"BEGIN:VEVENT") >= len(events)


@pytest.mark.parametrize("letters", [74, 75, 76, 149, 150, 300])
def test_a_line_is_folded_no_sooner_than_it_must_be(letters: int) -> None:
    """The first line takes 75 octets, each further one 74 besides its space."""
    text = folded("x" * letters)
    assert len(text.split("\r\n")) - 1 == 1 + max(0, -(-(letters - 75) // 74))
    assert unfolded(text) == ["x" * letters, ""]


def test_a_letter_of_four_octets_is_never_split() -> None:
    """12.05: it goes whole to the next line, which is then shorter."""
    text = folded("a" * 73 + "🏋" * 40)
    assert all(len(line.encode()) <= 75 for line in text.split("\r\n"))
    assert unfolded(text)[0] == "a" * 73 + "🏋" * 40


def test_times_are_written_as_the_standard_writes_them() -> None:
    """12.06: local and UTC forms, and durations."""
    # 12.06 RFC 5545 3.3.5: local 19970714T133000, UTC 19970714T173000Z
    assert moment(datetime(1997, 7, 14, 13, 30)) == "19970714T133000"
    assert moment(datetime(1997, 7, 14, 17, 30, tzinfo=UTC)) == "19970714T173000Z"
    # the same moment in New York's summer, four hours behind
    assert moment(datetime(1997, 7, 14, 13, 30, tzinfo=timezone(timedelta(hours=-4)))) == "19970714T173000Z"
    # 12.06 RFC 5545 3.3.6: P15DT5H0M20S = 1,314,020 s; P7W
    assert duration(1_314_020) == "P15DT5H0M20S"
    assert icalendar.vDuration.from_ical("P7W") == icalendar.vDuration.from_ical(duration(7 * 7 * 86400))


@given(st.integers(0, 10**8))
def test_a_duration_is_read_back(seconds: int) -> None:
    """Whatever its length; and hours and seconds never stand without the minutes between (RFC 5545 3.3.6)."""
    text = duration(seconds)
    assert icalendar.vDuration.from_ical(text) == timedelta(seconds=seconds)
    assert not ("H" in text and "S" in text and "M" not in text)


def test_a_duration_is_never_negative() -> None:
    """Nor is a calendar made with one."""
    with pytest.raises(ValueError, match="-1 s"):
        duration(-1)


def test_comma_semicolon_backslash_and_line_end_are_escaped() -> None:
    """12.07: and colons and quotes are not (RFC 5545 3.3.11)."""
    assert escaped('a,b;c\\d\ne:"f"') == 'a\\,b\\;c\\\\d\\ne:"f"'
    assert escaped("a\r\nb\rc") == "a\\nb\\nc"


def test_what_no_value_may_hold_is_left_out() -> None:
    """Control characters and halves of letters, so that no text can end a line and begin a property of its own."""
    assert escaped("a\x00b\x1bc\x7fd\ud800e\x85\tf") == "abcde\tf"
    text = calendar([Event("1", STAMP, 60, "x\r\nATTACH:evil", "\nEND:VEVENT\n")], "n", STAMP)
    assert [line for line in unfolded(text) if line.startswith(("ATTACH", "END:VEVENT"))] == ["END:VEVENT"]


def test_every_event_has_a_uid_and_a_stamp() -> None:
    """12.07: each event needs a UID; of its own, so that one made anew takes the old one's place."""
    one = Event("a@drillpath", STAMP, 60, "Session 1")
    text = calendar([one, one._replace(uid="b@drillpath")], "Plan", STAMP)
    assert unfolded(text).count("DTSTAMP:20260102T030405Z") == 2
    assert {line for line in unfolded(text) if line.startswith("UID:")} == {"UID:a@drillpath", "UID:b@drillpath"}
    assert "X-WR-CALNAME:Plan" in unfolded(text)
    for wrong in ([one, one], [one._replace(uid="")]):
        with pytest.raises(ValueError, match="UID"):
            calendar(wrong, "Plan", STAMP)


def test_the_same_events_give_the_same_text() -> None:
    """And a start without a zone floats: it has no Z and no zone."""
    event = Event("a", datetime(2026, 3, 29, 18, 0), 3600, "Tuesday")
    assert calendar([event], "Plan", STAMP) == calendar([event], "Plan", STAMP)
    assert "DTSTART:20260329T180000\r\n" in calendar([event], "Plan", STAMP)


def test_no_events_are_a_calendar_too() -> None:
    """Empty, but lawful."""
    assert icalendar.Calendar.from_ical(calendar([], "Plan", STAMP))["VERSION"] == "2.0"
