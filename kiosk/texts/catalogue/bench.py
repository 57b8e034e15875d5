"""Texts: things for the simulated balance."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {}
