"""The table beside the simulated pan, and the hands that move what stands on it."""

from __future__ import annotations

import threading
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from drivers.simulated.materials import Material
from drivers.simulated.things import CheckWeight, Coins, Cup, Jar, Thing, Tray, Vessel
from drivers.simulated.water import grams_shown
from drivers.simulated.weighing_pan import WeighingPan


@dataclass(frozen=True, slots=True, kw_only=True)
class _Pour:
    """Pieces on their way into a jar on the pan: their running sum, and the jar before them."""

    jar: Jar
    sums: npt.NDArray[np.float64]
    rate: float
    started: float
    filling: float
    pieces: int


class Bench:
    """Things are made, filled and moved here; the pan feels whatever lies on it at once.

    What is drawn comes from ``seed``. ``lock`` is shared with whoever else moves the pan's time.
    """

    def __init__(
        self,
        pan: WeighingPan,
        clock: Callable[[], float],
        seed: int = 1,
        lock: threading.RLock | None = None,
    ) -> None:
        self.pour_rate = 60.0
        """Grams a second that run into a jar on the pan."""
        self._pan = pan
        self._clock = clock
        self._rng = np.random.default_rng([seed, 3])
        self._lock = lock if lock is not None else threading.RLock()
        self._on_pan: list[Thing] = []
        self._across: dict[Thing, float] = {}
        self._pouring: _Pour | None = None

    # Making things

    def new_cup(self, solid: bool = False, number: int | None = None) -> Cup:
        """An empty cup of 8 to 20 g, or a solid one of 60 to 120 g."""
        with self._lock:
            low, high = (60.0, 120.0) if solid else (8.0, 20.0)
            return Cup(self._rng.uniform(low, high), number=number)

    def cup(self, mass: float, number: int | None = None) -> Cup:
        """An empty cup that is known from before."""
        return Cup(mass, number=number)

    def new_tray(self) -> Tray:
        """An empty tray of 15 to 40 g."""
        with self._lock:
            return Tray(self._rng.uniform(15.0, 40.0))

    def new_jar(self) -> Jar:
        """An empty container of 60 to 160 g."""
        with self._lock:
            return Jar(self._rng.uniform(60.0, 160.0))

    def new_vessel(self) -> Vessel:
        """An empty vase of 80 to 160 g that takes 400 to 900 cm³."""
        with self._lock:
            return Vessel(self._rng.uniform(80.0, 160.0), cm3=self._rng.uniform(400.0, 900.0))

    def check_weight(self, grams: float) -> CheckWeight:
        """A weight of exactly so many grams."""
        return CheckWeight(grams)

    def coins(self, grams: float, count: int) -> Coins:
        """So many coins of ``grams`` each, worn a little: about 0.4 % light, 1 % apart.

        As thirty circulated dimes were (mosaicData, "Dimes").
        """
        with self._lock:
            pieces = self._rng.normal(0.9957 * grams, 0.0098 * grams, count)
            return Coins(float(pieces.sum()))

    # Filling and emptying

    def fill(self, cup: Thing, grams: float, material: Material) -> None:
        """Fill anew with a scoop set to ``grams``: whole pieces, so nearly but not exactly that."""
        with self._lock:
            self._stop_pouring()
            cup.filling, cup.pieces = 0.0, 0
            self._add(cup, material.draw_about(self._rng, grams))

    def fill_with_water(self, vessel: Vessel, celsius: float) -> None:
        """Fill to the brim with water of that temperature."""
        with self._lock:
            self._stop_pouring()
            vessel.filling = grams_shown(vessel.cm3, celsius)
            self.change(vessel)

    def scoop(self, thing: Thing, grams: float, material: Material) -> None:
        """Add a scoop of about ``grams`` to what is in it."""
        with self._lock:
            self._stop_pouring()
            self._add(thing, material.draw_about(self._rng, grams))

    def count_onto(self, tray: Thing, pieces: int, material: Material) -> None:
        """Count new pieces onto the tray, each with its own mass."""
        with self._lock:
            self._stop_pouring()
            self._add(tray, material.draw(self._rng, pieces))

    def empty(self, thing: Thing) -> None:
        """Tip out what is in it."""
        with self._lock:
            self._stop_pouring()
            thing.filling, thing.pieces = 0.0, 0
            self.change(thing)

    clear = empty  # what one does to a tray

    def pour(
        self,
        jar: Jar,
        material: Material,
        *,
        grams: float | None = None,
        pieces: int | None = None,
    ) -> None:
        """Pour about ``grams``, or so many ``pieces``, into the jar.

        On the pan they run in at ``pour_rate``, and ``jar.pieces`` follows; any other move ends
        the pour with what is in. Beside the pan they are in at once. Raises ValueError unless
        one of the two is given.
        """
        with self._lock:
            masses = self._portion(material, grams, pieces)
            self._stop_pouring()
            if jar in self._on_pan and len(masses):
                self._start_pouring(jar, np.cumsum(masses))
            else:
                self._add(jar, masses)

    @property
    def pouring(self) -> bool:
        """Whether a pour still runs."""
        with self._lock:
            self._follow_pour()
            return self._pouring is not None

    def stop_pouring(self) -> None:
        """End a pour with the pieces that are in."""
        with self._lock:
            self._stop_pouring()

    # On and off the pan

    @property
    def on_pan(self) -> tuple[Thing, ...]:
        """What lies on the pan, in the order in which it came."""
        with self._lock:
            self._follow_pour()
            return tuple(self._on_pan)

    def put(self, thing: Thing, across: float = 0.0) -> None:
        """Put it on the pan, beside whatever lies there; ValueError if it lies there already.

        ``across`` is where: from -1 at the left edge over 0 in the middle to 1 at the right one.
        """
        with self._lock:
            if thing in self._on_pan:
                raise ValueError("This thing lies on the pan already; lift it first.")
            self._stop_pouring()
            self._on_pan.append(thing)
            self._across[thing] = across
            self._weigh_down()

    def lift(self, thing: Thing | None = None) -> None:
        """Take one thing off the pan, or everything; what is not there stays where it is."""
        with self._lock:
            self._stop_pouring()
            self._on_pan = [
                other for other in self._on_pan if thing is not None and other is not thing
            ]
            self._weigh_down()

    def change(self, thing: Thing) -> None:
        """Let the pan feel that something about a thing on it has changed."""
        with self._lock:
            if thing in self._on_pan:
                self._weigh_down()

    def lean(self, grams: float = 60.0, tremor_divisions: float = 8.0) -> None:
        """A hand leans on the pan, trembling, until ``let_go``."""
        with self._lock:
            self._pan.lean(grams, tremor_divisions, self._clock())

    def let_go(self) -> None:
        """The leaning hand goes away."""
        with self._lock:
            self._pan.let_go(self._clock())

    def draught(self, divisions: float) -> None:
        """A fan blows over the pan (standard deviation in divisions); 0 switches it off."""
        with self._lock:
            self._pan.draught(divisions)

    def _portion(
        self, material: Material, grams: float | None, pieces: int | None
    ) -> npt.NDArray[np.float64]:
        if grams is not None and pieces is None:
            return material.draw_about(self._rng, grams)
        if pieces is not None and grams is None:
            return material.draw(self._rng, pieces)
        raise ValueError("Say how much to pour: either grams or pieces.")

    def _add(self, thing: Thing, masses: npt.NDArray[np.float64]) -> None:
        thing.filling += float(masses.sum())
        thing.pieces += len(masses)
        self.change(thing)

    def _weigh_down(self) -> None:
        self._pan.load(self._load(), self._clock())

    def _load(self) -> float:
        """What the pan feels, which errors of span and corner make more than what lies there."""
        profile = self._pan.profile
        return sum(
            thing.grams * (1 + profile.span_error - profile.corner_error * self._across[thing])
            for thing in self._on_pan
        )

    def _start_pouring(self, jar: Jar, sums: npt.NDArray[np.float64]) -> None:
        now = self._clock()
        self._pouring = _Pour(
            jar=jar,
            sums=sums,
            rate=self.pour_rate,
            started=now,
            filling=jar.filling,
            pieces=jar.pieces,
        )
        poured = float(sums[-1]) * (1 + self._pan.profile.span_error)
        self._pan.pour_to(self._load() + poured, self.pour_rate, now)

    def _follow_pour(self) -> None:
        pour = self._pouring
        if pour is None:
            return
        poured = (self._clock() - pour.started) * pour.rate
        landed = int(np.searchsorted(pour.sums, poured, side="right"))
        pour.jar.pieces = pour.pieces + landed
        pour.jar.filling = pour.filling + (float(pour.sums[landed - 1]) if landed else 0.0)
        if landed == len(pour.sums):
            self._pouring = None

    def _stop_pouring(self) -> None:
        self._follow_pour()
        pour, self._pouring = self._pouring, None
        if pour is not None:
            in_flight = pour.jar.pieces - pour.pieces  # the piece that is falling still lands
            pour.jar.pieces += 1
            pour.jar.filling = pour.filling + float(pour.sums[in_flight])
            self._weigh_down()
