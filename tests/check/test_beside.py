"""Questions asked by several processes come back in their order, and by this one alone where there is no other."""

from concurrent.futures import BrokenExecutor, Future

import pytest
from report_small import FAULT, SNATCH, the_library

from kb.check import beside
from kb.check.asked import Told, matters, told
from kb.check.beside import FEW, Shelves, each, opened
from kb.terms import FaultId


def ask(shelves: Shelves, kit: str) -> list[Told]:
    """What a process is asked: a module's function."""
    return [told(*asked) for asked in matters(shelves, FAULT, (kit,))]


def test_many_and_few_are_answered_alike() -> None:
    """Whichever process asked, in order."""
    kits = ["stick", "hall"] * FEW
    with opened(the_library()) as catalogue:
        alone = [ask(catalogue.shelves, kit) for kit in kits]
        assert each(catalogue, ask, kits) == alone
        assert each(catalogue, ask, kits[:2]) == alone[:2]
        assert each(catalogue, ask, []) == []


def test_where_no_other_process_can_be(monkeypatch: pytest.MonkeyPatch) -> None:
    """It ended, or was never begun: this one asks all the same."""

    class Broken(Future):  # type: ignore[type-arg]
        def cancel(self) -> bool:
            return False

        def result(self, timeout: float | None = None) -> object:
            raise BrokenExecutor(timeout)

    kits = ["stick", "hall"] * FEW
    with opened(the_library()) as catalogue:
        monkeypatch.setattr(catalogue.others, "submit", lambda *_: Broken())
        assert each(catalogue, ask, kits) == [ask(catalogue.shelves, kit) for kit in kits]


def test_the_others_are_the_cores_but_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """One at least, and no more than can be fed."""
    for cores, others in ((None, 1), (1, 1), (2, 1), (8, 7), (64, beside.MOST)):
        monkeypatch.setattr(beside.os, "cpu_count", lambda cores=cores: cores)
        assert beside._others() == others


def test_only_questions_that_can_be_asked() -> None:
    """A fault of another lift isn't; one that there isn't has none."""
    with opened(the_library()) as catalogue:
        assert list(matters(catalogue.shelves, FaultId("no-such"), ("hall",))) == []
        (_, matter), *_ = matters(catalogue.shelves, FAULT, ("hall",))
        assert matter.shelf.lift.id == SNATCH
