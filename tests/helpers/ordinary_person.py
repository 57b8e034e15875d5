"""Tests that look at permissions mean nothing to root: for a while be somebody else."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager

NOBODY = 65534


@contextmanager
def ordinary_person() -> Iterator[None]:
    """Without root's rights inside; nothing happens for everybody else."""
    if os.geteuid() != 0:
        yield
        return
    os.seteuid(NOBODY)
    try:
        yield
    finally:
        os.seteuid(0)
