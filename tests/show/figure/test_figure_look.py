"""Colours of figures, by the published formula for contrast."""

import pytest
from svg_reading import read

from kb.make.library import Library
from kb.show.figure.drawing import figure_svg
from kb.show.figure.look import DARK, FAR, LIGHT, STYLE, TIMBER, alone, contrast
from kb.terms import PositionId


@pytest.mark.parametrize(
    ("colour", "ratio"),
    [  # 12.02 ratios on white, from WCAG's relative luminance
        ("#000000", 21.0),
        ("#767676", 4.54),
        ("#777777", 4.48),
        ("#949494", 3.03),
        ("#959595", 2.995),
        ("#ff0000", 3.998),
        ("#0000ff", 8.59),
    ],
)
def test_contrast_is_as_published(colour: str, ratio: float) -> None:
    """The formula gives the published ratios, either way round."""
    assert contrast(colour, "#ffffff") == pytest.approx(ratio, abs=0.006)
    assert contrast("#ffffff", colour) == contrast(colour, "#ffffff")


@pytest.mark.parametrize("scheme", [LIGHT, DARK], ids=["light", "dark"])
def test_every_tone_is_seen(scheme: dict[str, str]) -> None:
    """12.01: what must be understood is 3:1 from its paper; what is read as words is 4.5:1."""
    assert contrast(scheme["ink"], scheme["paper"]) >= 7
    assert contrast(scheme["accent"], scheme["paper"]) >= 4.5
    for tone in (TIMBER, FAR):
        assert contrast(tone, scheme["paper"]) >= 3


def test_print_is_black_on_white(library: Library) -> None:
    """12.01: on paper the tones stand 3:1 from white, and the trunk 3:1 from the black limbs before it."""
    assert contrast(TIMBER, "#ffffff") >= 3
    assert contrast(FAR, "#ffffff") >= 3
    assert contrast(TIMBER, "#000000") >= 3
    text = alone(figure_svg(library.positions[PositionId("clean-start")]))
    assert "@media print{svg{color:#000;--paper:#fff" in text
    assert "prefers-color-scheme:dark" in text


def test_alone_has_the_style_and_a_size(library: Library) -> None:
    """A file of its own carries its style once and is one user unit a pixel; one for a page carries none."""
    svg = figure_svg(library.positions[PositionId("clean-start")])
    assert "<style" not in svg
    root = read(alone(svg))
    assert (root.get("width"), root.get("height")) == ("160", "250")
    assert alone(svg).count("<style") == 1
    assert "moving" not in alone(svg)
    assert all(
        f".lifter .{name}" in STYLE for name in ("cut", "hub", "trunk", "far", "path", "fault", "moving", "still")
    )
