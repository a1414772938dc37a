"""The cause that leads where a fault shows only from some weight on: none that a stick shows as well."""

from kb.terms import Fault, Load

__all__ = ["under_weight"]


def under_weight(fault: Fault) -> str | None:
    """The commonest cause that needs a weight to show; None where the commonest of all does, or none needs one.

    Fear is never guessed: a strong lifter may show a fault only when it is heavy, and fear nothing.
    """
    if max(fault.causes[0].shows_at.load, fault.shows_at.load) >= Load.LIGHT or fault.causes[0].kind == "earlier":
        return None
    heavy = (
        each for each in fault.causes if each.shows_at.load >= Load.LIGHT and each.kind not in {"earlier", "nerve"}
    )
    return next((each.id for each in heavy), None)
