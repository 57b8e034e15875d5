"""Texts: a balance without a cable, whose display an adult reads off and types."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "typed_pan.blank": "Type the number first.",
    "typed_pan.negative": "Below zero. Empty the pan, press its zero.",
    "typed_pan.unfinished": "Digits are missing after the point.",
    "typed_pan.no_number": "{text} is no number. Type digits and one point.",
    "typed_pan.too_long": "Too long. At most {digits} digits, and {decimals} after the point.",
    "typed_pan.not_zero": "Not zero. Empty the pan, press its zero, type that.",
    "typed_pan.zero_first": "First type the zero that the empty pan shows.",
    "typed_pan.decimals": (
        "So far {count} digit after the point. Type all digits, or tap Yes.",
        "So far {count} digits after the point. Type all digits, or tap Yes.",
    ),
    "pad.zero": "Type the zero of the empty pan.",
    "pad.zero.title": "Is the pan empty?",
    "pad.zero.body": "Press the scale's zero. Then type what it shows.",
    "pad.zero.digits": "All its digits:\n0 or 0.0\nor 0.00",
    "pad.mass": "Type what the scale shows.",
    "pad.empty": "When the pan is empty, tap the key.",
    "pad.read_zero": "Empty pan: type what it shows, then tap.",
    "pad.done": "That\nis it",
    "pad.sure": "Yes",
    "pad.pan_empty": "Pan is\nempty",
    "pad.unit": "g",
    "pad.typed": "typed",
    "pan.typed": "typed",
    "strip.typed": "Typed readings",
}
