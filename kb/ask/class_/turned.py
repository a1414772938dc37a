"""Whom a class isn't planned for: who, by what is said of them, asks someone qualified first."""

from kb.ask.cautions import Care, care_of
from kb.ask.class_.people import Class, Lifter

__all__ = ["care_for", "without_turned"]


def care_for(lifter: Lifter) -> Care:
    """The care that a lifter's name and what is said of them call for."""
    return care_of(f"{lifter.name}. {lifter.said}", cleared=lifter.cleared)


def without_turned(asked: Class) -> Class:
    """The class with those set aside for whom a care is all, so that no bar, bench or card is given to them."""
    stays, aside = list[Lifter](), list[Lifter]()
    for each in asked.lifters:
        care = care_for(each)
        (stays if care.caution is None or care.rest is not None else aside).append(each)
    return asked._replace(lifters=tuple(stays), turned=tuple(aside))
