"""What is said to a lifter: a cue, and what it acts on."""

from collections.abc import Iterator

__all__ = ["ACTS_ON", "cues_said"]

ACTS_ON = ("Bar", "Floor", "Body", "Timing")
"""What a cue can act on: the bar or stick, the floor and whatever stands in the room, the body, when and how fast."""


def cues_said(text: str) -> Iterator[tuple[str, str]]:
    r"""The items of a section *Say*, in order: what each acts on, empty if it doesn't say, and what is said.

    >>> list(cues_said('- Bar: Drop with the bar.\n- Wait: then go.'))
    [('Bar', 'Drop with the bar.'), ('', 'Wait: then go.')]
    """
    for line in text.splitlines():
        if (item := line.strip()).startswith("- "):
            acts_on, colon, said = item[2:].partition(":")
            labelled = bool(colon) and acts_on in ACTS_ON
            yield (acts_on if labelled else ""), (said if labelled else item[2:]).strip().strip('"')
