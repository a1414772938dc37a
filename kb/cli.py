"""The command `drillpath`."""

import gc
import sys

__all__ = ["main"]


def main() -> None:
    """Run the command; a terminal that can't show a character gets a question mark for it.

    The process answers one question and ends, so nothing is collected on the way: that would take a tenth of
    the time, importing click included, which is why that is done here.
    """
    gc.disable()
    from kb.commands.group import drillpath

    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    try:
        drillpath(prog_name="drillpath")
    finally:
        # what is left is not looked through once more when the interpreter ends
        gc.freeze()
