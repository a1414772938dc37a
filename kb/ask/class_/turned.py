"""Whom a class isn't planned for: who, by what is said of them, asks someone qualified first."""

from kb.ask.cautions import care_of
from kb.ask.class_.people import Class, Lifter

__all__ = ["may_clear", "turned", "without_turned"]


def turned(lifter: Lifter) -> bool:
    """Whether a care is all that what is said of them allows."""
    care = care_of(f"{lifter.name}. {lifter.said}", cleared=lifter.cleared)
    return care.caution is not None and care.rest is None


def may_clear(lifter: Lifter) -> bool:
    """Whether they would be planned for, were it said that they are well and cleared."""
    return care_of(f"{lifter.name}. {lifter.said}", cleared=lifter.cleared).may_clear


def without_turned(asked: Class) -> Class:
    """The class with them set aside, so that no bar, no bench and no card is given to who must ask first."""
    aside = tuple(filter(turned, asked.lifters))
    return asked._replace(lifters=tuple(each for each in asked.lifters if each not in aside), turned=aside)
