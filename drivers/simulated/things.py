"""The things beside the pan; masses in grams, as a perfect balance would find them."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(eq=False, slots=True)
class Thing:
    """Something that can lie on the pan: its own mass, and what is in it.

    ``pieces`` is the true count of what is in it, which no balance knows.
    """

    mass: float
    filling: float = 0.0
    pieces: int = 0

    @property
    def grams(self) -> float:
        """All that the pan feels of it."""
        return self.mass + self.filling


@dataclass(eq=False, slots=True)
class Cup(Thing):
    """A cup, perhaps with a number on it."""

    number: int | None = None


class Tray(Thing):
    """A tray for counted pieces."""


class Jar(Thing):
    """A container whose pieces are to be guessed."""


class CheckWeight(Thing):
    """A weight whose mass is known."""


class Coins(Thing):
    """Coins of one kind."""


@dataclass(eq=False, slots=True)
class Vessel(Thing):
    """A container of any shape that can be filled with water to the brim: ``cm3`` of it."""

    cm3: float = 0.0
