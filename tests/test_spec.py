"""The chains that matter, as a coach would read them: data and text are both compared."""

import pytest
from spec_cases import Case, answered, cases


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.file)
def test_a_coachs_question(case: Case) -> None:
    """The chain as printed, and the same as data."""
    data, text = answered(case.command)
    assert data == case.data
    assert text == case.text
    assert case.why.startswith("Right because ")


def test_there_are_twelve() -> None:
    """Twelve that matter are kept."""
    assert len(cases()) >= 12
