"""A library's quality page for programs, in the shape of kb/docs/answers.md."""

from typing import TYPE_CHECKING, Any

from kb.show.as_json import VERSION
from kb.terms import Stage

if TYPE_CHECKING:
    from kb.check.report.contribution import Contribution, Use
    from kb.check.report.coverage import Answered, Coverage
    from kb.check.report.gaps import Gap
    from kb.check.report.report import Report

__all__ = ["report_json"]

Json = dict[str, Any]


def _stages(counts: tuple[int, ...]) -> Json:
    return {stage.word: count for stage, count in zip(Stage, counts, strict=True)}


def _coverage(each: "Coverage") -> Json:
    return {
        "lift": each.lift,
        "stages": _stages(each.stages),
        "points": [{"at": point, **_stages(counts)} for point, counts in each.points],
        "stretches": [{"from": first, "to": last, **_stages(counts)} for first, last, counts in each.stretches],
        "faults": each.faults,
        "causes": dict(each.kinds),
        "gateways": list(each.gateways),
        "thin": [{"fault": thin.fault, "cause": thin.cause, "drills": list(thin.drills)} for thin in each.thin],
    }


def _answered(each: "Answered") -> Json:
    return {
        "id": each.kit,
        "asked": each.asked,
        "answered": each.answered,
        "faults": each.faults,
        "of_faults": each.of_faults,
        "without": list(each.without),
        "unanswered": [unanswered._asdict() for unanswered in each.unanswered],
    }


def _use(use: "Use") -> Json:
    return use._asdict()


def _contribution(each: "Contribution") -> Json:
    return {
        "id": each.drill,
        "counts": each.counts,
        "chains": _use(each.chains),
        "paths": _use(each.paths),
        "swaps": _use(each.swaps),
        "kept_for": [{"why": kept.why, "of": list(kept.of)} for kept in each.kept],
    }


def _gap(each: "Gap") -> Json:
    fault, cause = each.works_on
    return {
        "lift": each.lift,
        "fault": each.fault,
        "cause": each.cause,
        "works_on": {"fault": fault, "cause": cause},
        "stage": each.stage.word,
        "reach": list(each.reach) if each.reach is not None else None,
        "speed": each.speed.word,
        "load": each.load.word,
        "catch": each.catch.word,
        "opens": list(each.opens),
        "joins": each.joins,
        "saves": each.saves,
        "acting": each.acting,
    }


def report_json(found: "Report") -> Json:
    """A report."""
    return {
        "version": VERSION,
        "entries": dict(found.entries),
        "asked_with": list(found.asked_with),
        "questions": {"asked": found.questions[0], "answered": found.questions[1]},
        "coverage": [_coverage(each) for each in found.coverage],
        "kits": [_answered(each) for each in found.kits],
        "drills": [_contribution(each) for each in found.contributions],
        "idle": [each.drill for each in found.idle],
        "gaps": [_gap(each) for each in found.gaps],
        "reading": [each._asdict() for each in found.readings],
        "unreviewed": {
            "never": list(found.unreviewed.never),
            "changed": [{"id": each.id, "date": each.on, "who": each.who} for each in found.unreviewed.changed],
        },
    }
