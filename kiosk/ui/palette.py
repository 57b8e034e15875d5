"""The colours by name, as (red, green, blue, opacity) from 0 to 1; no Kivy.

Data colours are those of the Okabe-Ito set, which stay apart with every kind of colour sight.
"""

from __future__ import annotations

from typing import ClassVar

Colour = tuple[float, float, float, float]


def rgba(code: str) -> Colour:
    """``#RRGGBB`` as four shares from 0 to 1."""
    red, green, blue = (int(code[start : start + 2], 16) / 255 for start in (1, 3, 5))
    return red, green, blue, 1.0


class Palette:
    """Every colour of the look; a class, so that the theme can offer them as its own."""

    # surfaces
    bench: ClassVar = rgba("#E7DBC5")
    seam: ClassVar = rgba("#D8C9AC")
    shade: ClassVar = rgba("#CDBB99")
    drawer: ClassVar = rgba("#C9B48E")
    drawer_d: ClassVar = rgba("#A98F63")
    sheet: ClassVar = rgba("#FBF8F1")
    card: ClassVar = rgba("#FFFFFF")
    kraft: ClassVar = rgba("#F1E8D6")
    hair: ClassVar = rgba("#D9CEB8")
    grid: ClassVar = rgba("#E6DFCE")
    line: ClassVar = rgba("#8C8066")
    steel: ClassVar = rgba("#EFEDE8")
    lid: ClassVar = rgba("#3B372E")
    lid_ring: ClassVar = rgba("#575144")
    strip: ClassVar = rgba("#1F2421")

    # text
    ink: ClassVar = rgba("#1F2421")
    soft: ClassVar = rgba("#454034")

    # the one action
    act: ClassVar = rgba("#7A1F4B")
    act_d: ClassVar = rgba("#571136")
    act_t: ClassVar = rgba("#F3DEE7")

    # data: fill, text (_x), tint (_t)
    under: ClassVar = rgba("#0072B2")
    under_x: ClassVar = rgba("#004F7C")
    under_t: ClassVar = rgba("#D5E7F2")
    under_seam: ClassVar = rgba("#B4D0E2")
    over: ClassVar = rgba("#D55E00")
    over_x: ClassVar = rgba("#873A00")
    over_t: ClassVar = rgba("#FAE1CE")
    over_seam: ClassVar = rgba("#EBC3A5")
    on: ClassVar = rgba("#009E73")
    on_x: ClassVar = rgba("#005440")
    on_t: ClassVar = rgba("#CBEADF")

    # material, and what belongs to this pair
    lamp: ClassVar = rgba("#F2C14E")
    lamp_t: ClassVar = rgba("#FBE7B5")
    lamp_shade: ClassVar = rgba("#D9A441")
    passed: ClassVar = rgba("#DDB866")
    grain: ClassVar = rgba("#8A5A12")

    hazard: ClassVar = rgba("#F0E442")
