"""Column types that give back exactly what went in, on SQLite and on PostgreSQL."""

from __future__ import annotations

import json
from dataclasses import asdict
from datetime import UTC, datetime
from decimal import Decimal
from typing import Any

from sqlalchemy import Dialect, String, TypeDecorator

from kiosk.records.entries import CheckedRow


class Exact(TypeDecorator[Decimal]):
    """A decimal number as text: 3.40 stays 3.40, in every store and for every reader."""

    impl = String
    cache_ok = True

    def process_bind_param(self, value: Decimal | None, dialect: Dialect) -> str | None:
        """Refuses NaN and infinity with ValueError: no balance showed them."""
        if value is None:
            return None
        if not value.is_finite():
            raise ValueError(f"{value} is not a number to keep")
        return str(value)

    def process_result_value(self, value: str | None, dialect: Dialect) -> Decimal | None:
        """The number with the digits that it was given."""
        return None if value is None else Decimal(value)


class Moment(TypeDecorator[datetime]):
    """A time as text in UTC, always as long: SQLite's own type would lose the zone."""

    impl = String
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> str | None:
        """Refuses a time without a zone with ValueError."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError(f"{value!r} has no time zone")
        return value.astimezone(UTC).isoformat(timespec="microseconds")

    def process_result_value(self, value: str | None, dialect: Dialect) -> datetime | None:
        """The time in UTC."""
        return None if value is None else datetime.fromisoformat(value)


class Lines(TypeDecorator[tuple[str, ...]]):
    """A few lines of text as one JSON list."""

    impl = String
    cache_ok = True

    def process_bind_param(self, value: tuple[str, ...] | None, dialect: Dialect) -> str | None:
        """The list as JSON."""
        return None if value is None else json.dumps(value, ensure_ascii=False)

    def process_result_value(self, value: str | None, dialect: Dialect) -> tuple[str, ...] | None:
        """The lines in their order."""
        return None if value is None else tuple(json.loads(value))


class CheckedRows(TypeDecorator[tuple[CheckedRow, ...]]):
    """The verdicts of a check as one JSON list of objects; masses as text, None as null."""

    impl = String
    cache_ok = True

    def process_bind_param(
        self, value: tuple[CheckedRow, ...] | None, dialect: Dialect
    ) -> str | None:
        """The list as JSON."""
        if value is None:
            return None
        return json.dumps([asdict(row) for row in value], ensure_ascii=False, default=str)

    def process_result_value(
        self, value: str | None, dialect: Dialect
    ) -> tuple[CheckedRow, ...] | None:
        """The verdicts in their order."""
        return None if value is None else tuple(map(_checked_row, json.loads(value)))


_GRAMS = ("known", "shown", "off", "limit")


def _checked_row(kept: dict[str, Any]) -> CheckedRow:
    masses = {name: kept[name] for name in _GRAMS}
    exact = {name: None if text is None else Decimal(text) for name, text in masses.items()}
    return CheckedRow(**kept | exact)
