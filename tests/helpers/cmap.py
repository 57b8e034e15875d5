"""Which characters a TrueType font can draw.

Source: the OpenType specification, tables "cmap" (format 4, the basic plane) and its header.
"""

from __future__ import annotations

import struct
from pathlib import Path

PLATFORM_WINDOWS, UNICODE_BASIC = 3, 1


def characters(font: Path) -> frozenset[str]:
    """All characters of the basic plane for which ``font`` has a glyph."""
    data = font.read_bytes()
    table = _table(data, b"cmap")
    (count,) = struct.unpack_from(">H", data, table + 2)
    for index in range(count):
        platform, encoding, offset = struct.unpack_from(">HHL", data, table + 4 + 8 * index)
        if (platform, encoding) == (PLATFORM_WINDOWS, UNICODE_BASIC):
            return _format_4(data, table + offset)
    raise ValueError(f"{font.name} has no table for the basic plane")


def _table(data: bytes, name: bytes) -> int:
    (count,) = struct.unpack_from(">H", data, 4)
    for index in range(count):
        tag, _, offset, _ = struct.unpack_from(">4sLLL", data, 12 + 16 * index)
        if tag == name:
            return int(offset)
    raise ValueError(f"no table {name!r}")


def _format_4(data: bytes, start: int) -> frozenset[str]:
    form, _, _, doubled = struct.unpack_from(">HHHH", data, start)
    if form != 4:
        raise ValueError(f"cmap format {form} is not known here")
    count = doubled // 2
    row = struct.Struct(f">{count}H")
    places = [start + 14, start + 16 + doubled, start + 16 + 2 * doubled, start + 16 + 3 * doubled]
    ends, starts, deltas, offsets = (row.unpack_from(data, place) for place in places)
    found = set()
    for segment in range(count):
        for code in range(starts[segment], ends[segment] + 1):
            glyph = code
            if offsets[segment]:
                place = places[3] + 2 * segment + offsets[segment] + 2 * (code - starts[segment])
                (glyph,) = struct.unpack_from(">H", data, place)
            if (glyph + deltas[segment] if glyph or not offsets[segment] else 0) % 0x10000:
                found.add(chr(code))
    return frozenset(found)
