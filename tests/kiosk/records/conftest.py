from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from kiosk.records.store import Store


@pytest.fixture
def where(tmp_path: Path) -> str:
    return str(tmp_path / "records.sqlite")


@pytest.fixture
def store(where: str) -> Iterator[Store]:
    store = Store(where)
    yield store
    store.close()
