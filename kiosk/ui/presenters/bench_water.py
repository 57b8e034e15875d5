"""A vase and water on the bench of the simulated scale."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property

from drivers.simulated.bench import Bench
from drivers.simulated.things import Vessel
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.ui.presenters.bench_tiles import TileView

CELSIUS = 21


class WaterThings:
    """One vase, filled and emptied beside the pan alone."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench

    @cached_property
    def vase(self) -> Vessel:
        """Made when it is first needed: until then nothing is drawn by lot."""
        return self._bench.new_vessel()

    def tiles(self) -> list[TileView]:
        """The vase, and what can be done with it."""
        on, full = self._on_pan, self.vase.filling > 0
        fill = say("bench.fill_vase", celsius=number(CELSIUS))
        art = "full vase" if full else "vase"
        return [
            TileView(key="vase", text=say("bench.vase"), art=art, on_pan=on),
            TileView(key="water", text=fill, art="water", off=on),
            TileView(key="no water", text=say("bench.empty_vase"), art="no water", off=on),
        ]

    def actions(self) -> dict[str, Callable[[], object]]:
        """What a tap on each tile does."""
        return {"vase": self._move, "water": self._fill, "no water": self._empty}

    @property
    def _on_pan(self) -> bool:
        return self.vase in self._bench.on_pan

    def _move(self) -> None:
        was_there = self._on_pan
        self._bench.lift()
        if not was_there:
            self._bench.put(self.vase)

    def _fill(self) -> None:
        if not self._on_pan:
            self._bench.fill_with_water(self.vase, CELSIUS)

    def _empty(self) -> None:
        if not self._on_pan:
            self._bench.empty(self.vase)
