"""Texts: making a count key."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {}
