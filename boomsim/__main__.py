"""Run the commands as ``python -m boomsim``."""

import sys

from boomsim.cli import main

sys.exit(main())
