"""Make the catalogue, the graphs and the generated documentation: python build.py [--check]."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))

from kb.produce import main

if __name__ == "__main__":
    sys.exit(main())
