"""A library whose every text means harm: what must be shown as text, and be data in answers for programs."""

from dataclasses import replace
from pathlib import Path
from typing import Any

from kb.make.library import Library, load

__all__ = ["HARM", "hostile"]

SMALL = Path(__file__).parent / "data" / "small"

HARM = """</script><script>harmed()</script>"><img src=x onerror=harmed()> ' & </title></svg><svg onload=harmed()>"""

SECTION = f"""{HARM}

<script>harmed()</script>

<img src="http://127.0.0.1:9/x.png" onerror="harmed()">

[here](javascript:harmed()) and [there](data:text/html,<script>harmed()</script>) ![x](http://127.0.0.1:9/y.png)

<a href="javascript:harmed()" onclick="harmed()">x</a> `</code><script>harmed()</script>`
"""


def _told(sections: Any) -> dict[str, str]:
    return {heading: f'{text}\n\n- "{HARM}"\n\n{SECTION}' for heading, text in sections.items()}


def _named(table: Any, **more: Any) -> dict[Any, Any]:
    return {
        key: each._replace(
            name=each.name + HARM, also=(*each.also, f"also {key} {HARM}"), sections=_told(each.sections), **more
        )
        for key, each in table.items()
    }


def hostile() -> Library:
    """The small library with harm in every text, also where the rules for entries would refuse it."""
    kind = load(SMALL)
    drills = _named(kind.drills, not_for=f"nobody {HARM}")
    drills = {key: each._replace(standard=each.standard._replace(seen=HARM)) for key, each in drills.items()}
    faults = {
        key: each._replace(
            causes=tuple(cause._replace(text=cause.text + HARM) for cause in each.causes),
            tells=tuple(tell._replace(do=tell.do + HARM, look=tell.look + HARM) for tell in each.tells),
        )
        for key, each in _named(kind.faults).items()
    }
    positions = {
        key: each._replace(name=each.name + HARM, sections=_told(each.sections)) for key, each in kind.positions.items()
    }
    return replace(
        kind, drills=drills, faults=faults, items=_named(kind.items), lifts=_named(kind.lifts), positions=positions
    )
