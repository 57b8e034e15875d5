"""Addresses that are no file; a real server is another matter."""

from __future__ import annotations

import sys

import pytest

from kiosk.records.errors import Problem, RecordsError
from kiosk.records.store import Store


def trouble(where: str) -> RecordsError:
    with pytest.raises(RecordsError) as caught:
        Store(where)
    return caught.value


def test_without_the_driver_a_sentence_says_what_to_install(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "psycopg", None)
    error = trouble("postgresql://kiosk@server/event")
    assert error.problem is Problem.NO_DRIVER
    assert 'pip install "psycopg[binary]"' in str(error)


@pytest.mark.parametrize("where", ["mysql://server/event", "http://server", "://"])
def test_other_addresses_are_no_place_for_records(where: str) -> None:
    assert trouble(where).problem is Problem.BAD_ADDRESS


def test_a_torn_server_address_is_refused() -> None:
    assert trouble("postgresql://kiosk@server:port/event").problem is Problem.BAD_ADDRESS


@pytest.mark.parametrize("scheme", ["mysql", "postgresql"])
def test_a_password_is_never_shown(scheme: str) -> None:
    assert "sesame" not in str(trouble(f"{scheme}://kiosk:sesame@server:port/event"))
