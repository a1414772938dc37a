"""Records survive being written as plain JSON and read back."""

import json

import pytest

from kb import plain


@pytest.mark.parametrize(
    ("kind", "back"),
    [
        ("lifts", plain.lift_from),
        ("positions", plain.position_from),
        ("faults", plain.fault_from),
        ("items", plain.item_from),
        ("drills", plain.drill_from),
    ],
)
def test_every_shipped_record_round_trips(library, kind, back) -> None:
    """What an entry says is what comes back, to the last field."""
    for record in getattr(library, kind).values():
        assert back(json.loads(json.dumps(plain.to_plain(record)))) == record


def test_defaults_are_left_out(library) -> None:
    """What stands at its default is not stored."""
    for drill in library.drills.values():
        stored = plain.to_plain(drill)
        assert None not in stored.values()
        assert stored.get("bridge", False) is False
