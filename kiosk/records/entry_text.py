"""Entries as text and back, exactly: for what has to wait outside the records.

JSON, one object an entry. What JSON has no form for is an object with one name: a Decimal keeps its
digits, a time its zone, a frame its bytes.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from dataclasses import fields, is_dataclass
from datetime import datetime
from decimal import Decimal
from enum import StrEnum
from typing import Any

from kiosk.evidence import Source, Weighing
from kiosk.records.entries import CheckedRow, Entry
from kiosk.records.keeping import kinds_of_entries

_KIND = "is a"
_FORMS: dict[str, Callable[[str], Any]] = {
    "decimal": Decimal,
    "time": datetime.fromisoformat,
    "bytes": bytes.fromhex,
}


def text_of(entries: Sequence[Entry]) -> str:
    """The entries as one JSON list. TypeError for a value that has no form in it."""
    return json.dumps([_plain(entry) for entry in entries], ensure_ascii=False)


def entries_of(text: str) -> tuple[Entry, ...]:
    """The entries again. ValueError, TypeError or KeyError for a text that holds none of ours."""
    known = {kind.__name__: kind for kind in (*kinds_of_entries(), Weighing, CheckedRow)}

    def value(found: dict[str, Any]) -> Any:
        if _KIND not in found:
            ((form, text),) = found.items()
            return _FORMS[form](text)
        kind = known[found.pop(_KIND)]
        named: dict[str, Any] = {
            name: tuple(one) if isinstance(one, list) else one for name, one in found.items()
        }
        if kind is Weighing:
            named["source"] = Source(named["source"])
        return kind(**named)

    return tuple(json.loads(text, object_hook=value))


def _plain(value: Any) -> Any:
    if is_dataclass(value):
        named = {field.name: _plain(getattr(value, field.name)) for field in fields(value)}
        return {_KIND: type(value).__name__, **named}
    if isinstance(value, StrEnum):
        return value.value
    if value is None or isinstance(value, bool | int | str):
        return value
    if isinstance(value, Decimal):
        return {"decimal": str(value)}
    if isinstance(value, datetime):
        return {"time": value.isoformat()}
    if isinstance(value, bytes):
        return {"bytes": value.hex()}
    if isinstance(value, tuple):
        return [_plain(one) for one in value]
    raise TypeError(f"{value!r} cannot wait as text")
