"""Keeping large libraries out that ours would import only because they are there."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from types import ModuleType

__all__ = ["unimported"]


@contextmanager
def unimported(*names: str) -> Iterator[None]:
    """Let `names` seem not to be installed, unless they are imported already.

    sqlite-utils imports pandas and numpy where it finds them, and networkx's GraphML numpy, half a second
    in all, to know types that are never given to them here.
    """
    hidden: dict[str, ModuleType | None] = {name: None for name in names if name not in sys.modules}
    sys.modules.update(hidden)  # type: ignore[arg-type]  # None is how the import system marks what isn't there
    try:
        yield
    finally:
        for name in hidden:
            del sys.modules[name]
