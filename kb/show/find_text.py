"""What was found for a coach's words: faults first, then drills, each with its id to go on from."""

from collections.abc import Mapping

from kb.ask.cautions import AFTER
from kb.ask.cleared import IF_CLEARED
from kb.ask.find import Findings
from kb.show.coach_words import listed
from kb.show.is_it import is_it
from kb.show.prose import prose
from kb.show.setting import Setting, rows, titled, wrapped
from kb.terms import NOTHING

__all__ = ["find_text"]


def find_text(findings: Findings, setting: Setting, *, first: Mapping[str, str] = NOTHING) -> list[str]:
    """Findings in lines; the caution first where there is one; `first` is the text of the first fault, by heading."""
    care = wrapped(findings.caution, setting.width) if findings.caution else []
    if care and not (findings.faults or findings.drills):
        return [*care, "", *wrapped(IF_CLEARED, setting.width)] if findings.may_clear else care
    faults = rows([(hit.id, listed(hit.lifts), hit.name) for hit in findings.faults], setting)
    drills = rows([(hit.id, hit.name) for hit in findings.drills], setting)
    lines = [*titled("Faults", faults, setting), *_is_it(findings, first, setting)]
    lines += titled("Drills", drills, setting)
    if not lines:
        return ["Nothing in the library speaks of that; try what you saw in other words."]
    on = "`drillpath chain FAULT` says why, how to be sure, and what to do; `drillpath show NAME` more of any."
    care += ["", *wrapped(AFTER, setting.width), ""] if care else []
    return [*care, *lines[1:], "", *wrapped(on, setting.width)]


def _is_it(findings: Findings, first: Mapping[str, str], setting: Setting) -> list[str]:
    """How the first fault looks from where a coach stands, and what is mistaken for it."""
    lines = [line for text in is_it(first) for line in prose(text, setting, indent=2)]
    return titled(f"Is it the first? {findings.faults[0].name}", lines, setting) if lines else []
