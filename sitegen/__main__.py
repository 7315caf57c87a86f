"""``python -m sitegen`` is the same as the command ``sitegen``."""

import sys

from sitegen.cli import main

if __name__ == "__main__":
    sys.exit(main())
