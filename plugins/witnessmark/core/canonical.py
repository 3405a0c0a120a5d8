"""Plain data as one text, always the same for the same data, and what stands for it in short."""

import hashlib
import json


def canonical(data) -> str:
    """Maps with sorted keys, nothing between the signs."""
    return json.dumps(data, ensure_ascii=False, sort_keys=True, separators=(",", ":"))


def digest(data) -> str:
    """Ten signs that stand for plain data."""
    return hashlib.sha256(canonical(data).encode()).hexdigest()[:10]
