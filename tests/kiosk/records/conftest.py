from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from kiosk.records.store import Store


@pytest.fixture
def where(tmp_path: Path, request: pytest.FixtureRequest) -> str:
    """Where records may be: a file, or a server for a test that asks for it (BOTH_STORES)."""
    if getattr(request, "param", "file") == "server":
        return str(request.getfixturevalue("on_server"))
    return str(tmp_path / "records.sqlite")


@pytest.fixture
def store(where: str) -> Iterator[Store]:
    store = Store(where)
    yield store
    store.close()
