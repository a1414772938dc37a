"""What was found for a coach's words: faults first, then drills, each with its id to go on from."""

from kb.ask.cautions import AFTER
from kb.ask.find import Findings
from kb.show.coach_words import listed
from kb.show.setting import Setting, rows, titled, wrapped

__all__ = ["find_text"]


def find_text(findings: Findings, setting: Setting) -> list[str]:
    """Findings in lines; the caution first where there is one."""
    care = wrapped(findings.caution, setting.width) if findings.caution else []
    if care and not (findings.faults or findings.drills):
        return care
    faults = rows([(hit.id, listed(hit.lifts), hit.name) for hit in findings.faults], setting)
    drills = rows([(hit.id, hit.name) for hit in findings.drills], setting)
    lines = [*titled("Faults", faults, setting), *titled("Drills", drills, setting)]
    if not lines:
        return ["Nothing in the library speaks of that; try what you saw in other words."]
    on = "`drillpath chain FAULT` says what to do; `drillpath show NAME` says more of any."
    care += ["", *wrapped(AFTER, setting.width), ""] if care else []
    return [*care, *lines[1:], "", *wrapped(on, setting.width)]
