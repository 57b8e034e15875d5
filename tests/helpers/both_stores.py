"""Tests of what must hold for records in a file and on a server alike."""

from __future__ import annotations

import pytest

BOTH_STORES = pytest.mark.parametrize("where", ["file", "server"], indirect=True)
