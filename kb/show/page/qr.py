"""A page's address as a QR code, so that paper leads back to it."""

from io import BytesIO

__all__ = ["LONGEST", "qr_svg"]

LONGEST = 300
"""Letters of an address; a longer one makes a code too fine to print."""


def qr_svg(address: str) -> str:
    """An address as a QR code (ISO/IEC 18004, error correction M), black on white, as an SVG.

    Raises ValueError for one that is too long.
    """
    import segno

    if len(address) > LONGEST:
        raise ValueError(f"an address of {len(address)} letters is too long for a code that prints")
    drawn = BytesIO()
    code = segno.make(address, error="m", micro=False)
    code.save(drawn, kind="svg", xmldecl=False, border=4, dark="#000", light="#fff", omitsize=True, nl=False)
    return drawn.getvalue().decode()
