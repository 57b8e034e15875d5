"""The story of what lies on the pan: it comes, rests, is touched, goes.

Told by single readings (something came or went) and by rests (it lies still, the pan is empty).
"""

from __future__ import annotations

from decimal import Decimal
from enum import Enum, auto

from kiosk.weighing.pan_events import PanKind
from kiosk.weighing.settling import Move

SURE_AT_ONCE = 3  # times the limit: no second reading is needed


class _Pan(Enum):
    UNKNOWN = auto()
    EMPTY = auto()  # rested at zero
    LEAVING = auto()  # the load is off, the zero does not rest yet
    LOADED = auto()
    RESTED = auto()


class Load:
    """What lies on the pan, as far as known."""

    def __init__(self) -> None:
        self._pan = _Pan.UNKNOWN
        self._beyond = 0  # readings in a row that say something new

    @property
    def present(self) -> bool:
        """True if something lies on the pan."""
        return self._pan in (_Pan.LOADED, _Pan.RESTED)

    @property
    def gone(self) -> bool:
        """True if the pan is known to be empty and at rest."""
        return self._pan is _Pan.EMPTY

    def forget(self, *, present: bool) -> None:
        """Something came between; all that is known is whether there is a load."""
        self._pan = _Pan.LOADED if present else _Pan.UNKNOWN
        self._beyond = 0

    def judge_again(self) -> None:
        """The present load may settle once more, an empty pan be seen empty once more."""
        if self._pan is _Pan.RESTED:
            self._pan = _Pan.LOADED
        elif self._pan is _Pan.EMPTY:
            self._pan = _Pan.LEAVING

    def shown(
        self, grams: Decimal, band: Decimal, noise: Decimal, move: Move | None
    ) -> list[PanKind]:
        """Take a reading; ``move`` says that the pan has just left its rest, and how.

        ``band`` is the half width of zero, ``noise`` what noise may add to it, in grams.
        """
        kinds = []
        if self._pan is _Pan.RESTED and move is not None:
            self._pan = _Pan.LOADED
            if grams > band:
                kinds = [PanKind.LOAD_PLACED if move is Move.UP else PanKind.DISTURBED]
        if self._pan is _Pan.LOADED:
            return [*kinds, *self._taken_off(grams, band)]
        return [] if self._pan is _Pan.RESTED else self._put_on(grams, band + noise)

    def rested(self, grams: Decimal, band: Decimal) -> list[PanKind]:
        """Take a rest that begins within or above the zero band."""
        self._beyond = 0
        if grams > band:
            kinds = [] if self.present else [PanKind.LOAD_PLACED]
            self._pan = _Pan.RESTED
            return [*kinds, PanKind.SETTLED]
        kinds = [PanKind.LOAD_REMOVED] if self.present else []
        if self._pan is not _Pan.EMPTY:
            kinds.append(PanKind.PAN_EMPTY)
        self._pan = _Pan.EMPTY
        return kinds

    def _put_on(self, grams: Decimal, limit: Decimal) -> list[PanKind]:
        self._beyond = self._beyond + 1 if grams > limit else 0
        if self._beyond < 2 and grams <= SURE_AT_ONCE * limit:
            return []
        self._pan, self._beyond = _Pan.LOADED, 0
        return [PanKind.LOAD_PLACED]

    def _taken_off(self, grams: Decimal, band: Decimal) -> list[PanKind]:
        self._beyond = self._beyond + 1 if grams <= band else 0
        if self._beyond < 2:
            return []
        self._pan, self._beyond = _Pan.LEAVING, 0
        return [PanKind.LOAD_REMOVED]
