"""Texts: when something is in the way."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {}
