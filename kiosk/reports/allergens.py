"""What a material may do to somebody with an allergy, as far as its name tells.

The allergens are the nine major ones of United States law (Food Allergen Labeling and Consumer
Protection Act of 2004; sesame by the FASTER Act of 2021). That a name is not known here says
nothing: only the packet does.
"""

from __future__ import annotations

from kiosk.texts import say

# What such food is made of, or may be: common knowledge, no source.
HELD = {
    "pasta": ("wheat", "egg"),
    "noodles": ("wheat", "egg"),
    "macaroni": ("wheat", "egg"),
    "couscous": ("wheat",),
    "cereal": ("wheat",),
    "wheat": ("wheat",),
    "peanuts": ("peanut",),
    "almonds": ("tree_nuts",),
    "hazelnuts": ("tree_nuts",),
    "walnuts": ("tree_nuts",),
    "cashews": ("tree_nuts",),
    "soybeans": ("soy",),
    "soya": ("soy",),
    "sesame": ("sesame",),
    "chocolate": ("milk", "soy"),
}
NO_FOOD = ("beads", "buttons", "hex nuts", "sand", "gravel", "paper clips", "marbles")


def allergy_note(material: str) -> str:
    """A line about ``material``: what it holds, that it is no food, or to read its packet."""
    name = material.lower()
    if name in NO_FOOD:
        return say("paper.allergen.no_food", material=material)
    held = dict.fromkeys(one for word, ones in HELD.items() if word in name.split() for one in ones)
    if not held:
        return say("paper.allergen.packet", material=material)
    words = ", ".join(say(f"paper.allergen.{one}") for one in held)
    return say("paper.allergen.holds", material=material, allergens=words)
