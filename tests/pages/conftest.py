"""Lets the cases here import the tiny book that stands beside them."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
