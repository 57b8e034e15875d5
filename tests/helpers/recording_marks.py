"""Marks between the lines of a made recording."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator

WHERE = "practice port"
WHY = "the port went away"


def unplugged(lines: Iterable[str], lost_at: float, back_at: float) -> Iterator[str]:
    """The lines of a recording whose cable was out between these two moments."""
    header, *others = lines
    said = [json.loads(line) for line in others]
    yield header
    yield from (json.dumps(line) for line in said if line["t"] < lost_at)
    yield json.dumps({"t": lost_at, "hex": "", "lost": WHY})
    yield json.dumps({"t": back_at, "hex": "", "back": WHERE})
    yield from (json.dumps(line) for line in said if line["t"] > back_at)
