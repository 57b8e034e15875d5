"""Where a count stands in the trough: three bands and the gap between two of them."""

from __future__ import annotations

# (name, from, to, share of the width, one tick each); the gap belongs to no band of the event
SEGMENTS = (
    ("low", 100, 1_000, 0.233, 100),
    ("middle", 1_000, 10_000, 0.305, 1_000),
    ("", 10_000, 12_000, 0.102, 1_000),
    ("high", 12_000, 20_000, 0.36, 1_000),
)


def start(index: int) -> float:
    """Where a segment starts, as share of the whole width; one past the last is 1."""
    return sum(share for _, _, _, share, _ in SEGMENTS[:index])


def place(count: float) -> float:
    """Where ``count`` stands, as share of the whole width; it stops at both ends."""
    for index, (_, low, high, share, _) in enumerate(SEGMENTS):
        if count <= high:
            return start(index) + share * max(0.0, (count - low) / (high - low))
    return 1.0
