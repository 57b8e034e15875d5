"""Packet: what a transport hands over."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Packet:
    """Bytes that came at monotonic second ``at``: a chunk of a stream, cut anywhere.

    Empty ``data`` says that nothing came until ``at``.
    """

    at: float
    data: bytes
