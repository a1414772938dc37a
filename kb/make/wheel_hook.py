"""Put the library and a catalogue built from it into the wheel, as kb/shipped/."""

import shutil
import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

__all__ = ["ShippedLibrary"]


class ShippedLibrary(BuildHookInterface[Any]):
    """Hatchling's hook: builds the catalogue once, before the wheel's files are gathered."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Copy drills/ and build the catalogue from it; nothing for an editable install, which has the checkout."""
        if version == "editable":
            return
        root = Path(self.root)
        sys.path.insert(0, str(root))
        from kb.make.build import build

        shipped = root / "out" / "shipped"
        shutil.rmtree(shipped, ignore_errors=True)
        shutil.copytree(root / "drills", shipped / "drills")
        build(shipped, shipped / "built", graphs=None)
        build_data["force_include"][str(shipped / "drills")] = "kb/shipped/drills"
        build_data["force_include"][str(shipped / "built" / "catalogue.db")] = "kb/shipped/catalogue.db"
