"""Make the catalogue, the graphs and the generated documentation: python build.py [--check]."""

import gc
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))

from kb.produce import main

if __name__ == "__main__":
    # the process makes its files and ends: looking for what can be let go meanwhile takes a tenth of the time
    gc.disable()
    try:
        sys.exit(main())
    finally:
        # nor is what is left looked through once more when the interpreter ends
        gc.freeze()
