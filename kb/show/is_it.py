"""Whether a fault is the one that was seen: how it looks from where a coach stands, and what is mistaken for it."""

from collections.abc import Mapping

__all__ = ["is_it"]


def is_it(sections: Mapping[str, str]) -> tuple[str, ...]:
    """The paragraphs by which a coach knows a fault again, of its text by heading; none where it has none.

    >>> is_it({"Looks like": "The seat is up first.", "Mistaken for": "A round back."})
    ('The seat is up first.', 'Look alike: A round back.')
    """
    alike = sections.get("Mistaken for")
    return tuple(text for text in (sections.get("Looks like"), f"Look alike: {alike}" if alike else None) if text)
