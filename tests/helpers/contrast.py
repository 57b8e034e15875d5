"""How well a colour stands out from its ground.

Source: WCAG 2.2, definitions of "relative luminance" and "contrast ratio".
"""

from __future__ import annotations

from collections.abc import Sequence


def luminance(colour: Sequence[float]) -> float:
    """Relative luminance of red, green, blue from 0 to 1."""
    red, green, blue = (
        share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4
        for share in colour[:3]
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: Sequence[float], other: Sequence[float]) -> float:
    """Contrast ratio of two colours, 1 to 21."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)
