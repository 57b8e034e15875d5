"""Texts: what a driver reports."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {}
