"""Run the README's two commands as a newcomer would: in a clean clone, each block pasted into one shell.

Usage: python tests/readme_commands.py FOLDER [REPOSITORY]
"""

import os
import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]


def blocks(readme: str) -> list[str]:
    """The README's first two fenced blocks: the main job, then the tests."""
    return re.findall(r"^```(?:sh|bash|console)?\n(.*?)^```$", readme, re.MULTILINE | re.DOTALL)[:2]


def main(folder: Path, repository: Path) -> int:
    """Clone the committed state and run both blocks there; the first failure ends it."""
    subprocess.run(["git", "clone", "--quiet", "--no-hardlinks", str(repository), str(folder)], check=True)
    plain = {key: value for key, value in os.environ.items() if key not in ("VIRTUAL_ENV", "PYTHONPATH")}
    found = blocks((folder / "README.md").read_text(encoding="utf-8"))
    if len(found) != 2:
        print("README.md has not two commands", file=sys.stderr)
        return 1
    for number, block in enumerate(found, 1):
        print(f"-- README, command {number}\n{block}", flush=True)
        done = subprocess.run(["sh", "-euc", block], cwd=folder, env=plain, check=False)
        if done.returncode:
            print(f"README, command {number} failed ({done.returncode})", file=sys.stderr)
            return done.returncode
    return 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), Path(sys.argv[2]) if len(sys.argv) > 2 else ROOT))
