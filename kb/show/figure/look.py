"""How figures look: ink for what is near, timber for the trunk, a lighter tone for what is far, and cuts between.

Ink is the text's own colour and the cuts are the paper's, so a figure that stands in a page takes the page's
scheme. Timber and the far tone are the same in both schemes: each is at least 3:1 from light and from dark paper,
what WCAG 2.2 asks of a drawing that must be understood (1.4.11).
"""

from collections.abc import Mapping
from types import MappingProxyType

__all__ = ["ACCENT", "DARK", "FAR", "LIGHT", "STYLE", "TIMBER", "alone", "contrast"]

TIMBER = "#8a6b4a"
"""The trunk."""

FAR = "#8f8473"
"""The far arm and leg."""

LIGHT: Mapping[str, str] = MappingProxyType({"ink": "#1f1a14", "paper": "#f7f3ea", "accent": "#b4532a"})
DARK: Mapping[str, str] = MappingProxyType({"ink": "#f1eadc", "paper": "#1b1814", "accent": "#e58a5c"})
"""What a figure that stands alone is drawn in, by the reader's preference."""

ACCENT = "#b4532a"
"""The bar's path and the word over a fault, where nothing else is said."""

STILL = f"""\
.lifter .cut{{stroke:var(--paper,Canvas)}}
.lifter .hub{{fill:var(--paper,Canvas)}}
.lifter .trunk{{fill:var(--timber,{TIMBER})}}
.lifter .far{{fill:var(--far,{FAR})}}
.lifter .path,.lifter .fault{{color:var(--band,{ACCENT})}}
"""

MOVING = """\
.lifter .moving{display:none}
@media screen and (prefers-reduced-motion:no-preference){
.lifter .moving{display:inline}
.lifter .still{display:none}
}
"""

STYLE = STILL + MOVING
"""The style sheet of figures in a page. It reads --paper and --band from the page, if the page has them."""


def alone(svg: str) -> str:
    """A figure as a file of its own: with its style and colours, dark if the reader prefers it, plain on paper."""
    schemes = (
        f"svg{{color:{LIGHT['ink']};--paper:{LIGHT['paper']};--band:{LIGHT['accent']};background:{LIGHT['paper']}}}"
        f"@media (prefers-color-scheme:dark){{svg{{color:{DARK['ink']};--paper:{DARK['paper']};"
        f"--band:{DARK['accent']};background:{DARK['paper']}}}}}"
        "@media print{svg{color:#000;--paper:#fff;--band:#000;background:#fff}}"
    )
    head, close, rest = svg.partition(">")
    width, height = head.partition('viewBox="')[2].partition('"')[0].split()[2:]
    style = STYLE if 'class="moving"' in rest else STILL
    return f'{head} width="{width}" height="{height}"{close}<style>{schemes}\n{style}</style>{rest}\n'


def contrast(one: str, other: str) -> float:
    """How far two colours (#rrggbb) stand apart: 1 for the same, 21 for black on white.

    References
    ----------
    W3C, Web Content Accessibility Guidelines 2.2: relative luminance, contrast ratio.
    """
    lighter, darker = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    parts = (int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5))
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
