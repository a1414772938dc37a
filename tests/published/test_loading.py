"""Bars, discs, strength formulas and Prilepin's table, as they are published (rows 2.01-2.05, 2.15, 3.01-3.10)."""

import pytest

from kb.bests import SHARE_OF_REPS, brzycki, epley, estimate, lombardi
from kb.discs import BARS, COLLAR_KG, DISCS, Disc, Iron, disc_list, exactly, iron_of
from kb.errors import BadInput
from kb.prilepin import FIRST_PRINT, OTHER_PRINT, Row, most, rows
from kb.show.load_text import FULL_SIZE_KG


def test_bars() -> None:
    """The men's bar 20 kg, the women's 15 kg."""
    assert BARS["kg"]["men"] == 20  # 2.01 IWF TCRR
    assert BARS["kg"]["women"] == 15  # 2.01 IWF TCRR


def test_discs_and_collars() -> None:
    """Ten sizes, and a collar of 2.5 kg on each side."""
    assert tuple(DISCS["kg"]) == (25, 20, 15, 10, 5, 2.5, 2, 1.5, 1, 0.5)  # 2.03 IWF TCRR
    assert COLLAR_KG == 2.5  # 2.05 IWF TCRR
    assert FULL_SIZE_KG == 10  # 2.04 IWF TCRR: 450 mm from 10 kg


@pytest.mark.parametrize(
    ("total", "collars", "side"),
    [
        (60, True, (15, 2.5)),  # 2.15
        (100, True, (25, 10, 2.5)),  # 2.15
        (137, True, (25, 25, 5, 1)),  # 2.15
        (50, False, (15,)),  # 2.15
        (81, False, (25, 5, 0.5)),  # 2.15
        (26, True, (0.5,)),  # 2.15, the least with discs
        (21, False, (0.5,)),  # 2.15, the least with discs
    ],
)
def test_weights_disc_by_disc(total: float, collars: bool, side: tuple[float, ...]) -> None:
    """The largest innermost (2.05), which is first."""
    assert exactly(total, iron_of(collars=collars)) == side


# 3.04, computed there from 3.01 Epley 1985, 3.02 Brzycki 1993, 3.03 Lombardi 1989, for 100 kg
ONCE = {
    2: (106.67, 102.86, 107.18),
    3: (110.00, 105.88, 111.61),
    5: (116.67, 112.50, 117.46),
    8: (126.67, 124.14, 123.11),
    10: (133.33, 133.33, 125.89),
}


@pytest.mark.parametrize("reps", ONCE)
def test_formulas(reps: int) -> None:
    """Each to the two decimals that are printed; the estimate is the least of the three."""
    assert (round(epley(100, reps), 2), round(brzycki(100, reps), 2), round(lombardi(100, reps), 2)) == ONCE[reps]
    assert round(estimate(100, reps).kg, 2) == min(ONCE[reps])


def test_a_single_is_its_own_best() -> None:
    """By the bare formula Epley would give 103.33 for one repetition (3.04, 13.7): one is handled apart."""
    assert round(100 * (1 + 1 / 30), 2) == 103.33  # 3.04
    assert (epley(100, 1), brzycki(100, 1), lombardi(100, 1)) == (100, 100, 100)  # 3.04 but for Epley
    assert estimate(100, 1) == (100, None)


def test_epley_and_brzycki_meet_at_ten() -> None:
    """Exactly; below ten Epley is higher (3.05)."""
    assert epley(90, 10) == pytest.approx(brzycki(90, 10))
    assert all(epley(90, reps) > brzycki(90, reps) for reps in range(2, 10))


def test_beyond_ten_repetitions_nothing_is_estimated() -> None:
    """As Reynolds 2006 found for presses (3.06): not beyond ten."""
    with pytest.raises(BadInput, match="1 to 10 repetitions, not of 11"):
        estimate(100, 11)


@pytest.mark.parametrize(
    ("reps", "kg", "of_five", "published"),
    [
        (5, 100, 1.1307 * 100 + 0.6999, 113.77),  # 3.06 Reynolds 2006, chest press
        (5, 100, 1.0970 * 100 + 14.2546, 123.95),  # 3.06 Reynolds 2006, leg press
    ],
)
def test_the_estimate_is_under_what_was_measured(reps: int, kg: float, of_five: float, published: float) -> None:
    """The least of the three formulas stays below both of Reynolds' regressions for a set of five."""
    assert round(of_five, 2) in (published, round(published + 0.01, 2), round(published - 0.01, 2))
    assert estimate(kg, reps).kg < of_five


def test_repetitions_at_a_share() -> None:
    """A printed table of what can just be done, cell by cell."""
    printed = {1: 100, 2: 95, 3: 93, 4: 90, 5: 87, 6: 85, 7: 83, 8: 80, 9: 77, 10: 75}  # 3.07
    assert dict(SHARE_OF_REPS) == printed


def test_prilepins_table_cell_by_cell() -> None:
    """3.09 Prilepin 1974: share, repetitions of a set, best total, range of totals."""
    printed = (
        Row(55, 65, (3, 6), 24, (18, 30)),
        Row(70, 80, (3, 6), 18, (12, 24)),
        Row(80, 90, (2, 4), 15, (10, 20)),
        Row(90, 150, (1, 2), 4, (2, 10)),
    )
    assert printed == FIRST_PRINT


@pytest.mark.from_memory
def test_the_other_print_cell_by_cell() -> None:
    """3.10 Prilepin 1974 via Medvedyev: below 70, 70-79, 80-89, 90 and more; the last row 7 and 4 to 10."""
    printed = (
        Row(0, 69, (3, 6), 24, (18, 30)),
        Row(70, 79, (3, 6), 18, (12, 24)),
        Row(80, 89, (2, 4), 15, (10, 20)),
        Row(90, 150, (1, 2), 7, (4, 10)),
    )
    assert printed == OTHER_PRINT


@pytest.mark.parametrize(
    ("percent", "of_a_set", "of_all"),
    [(70, 6, 24), (79, 6, 24), (80, 6, 24), (81, 4, 20), (89, 4, 20), (90, 4, 20), (91, 2, 10), (100, 2, 10)],
)
def test_both_prints_stand(percent: int, of_a_set: int, of_all: int) -> None:
    """At the edges what either print allows is inside (3.09, 3.10)."""
    assert most(percent) == (of_a_set, of_all)
    assert all(row.low <= percent <= row.high for row in rows(percent))


def test_pounds_are_the_trades() -> None:
    """Discs of 45 35 25 10 5 2.5 lb on a bar of 45 or 35 lb: common practice, no source."""
    pounds = iron_of(unit="lb")
    assert pounds == Iron(45, tuple(map(Disc, (45, 35, 25, 10, 5, 2.5))), 0, "lb")
    assert iron_of("women", "lb").bar == 35
    assert exactly(135, pounds) == (45,)
    assert exactly(225, pounds) == (45, 45)
    assert disc_list(exactly(225, pounds)) == "2 x 45"
