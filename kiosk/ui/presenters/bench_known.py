"""Known masses on the bench of the simulated scale: check weights, and coins a little worn."""

from __future__ import annotations

from drivers.simulated.bench import Bench
from drivers.simulated.things import Thing
from kiosk.estimating.known_masses import COINS
from kiosk.procedures.balance_check import BalanceCheck
from kiosk.procedures.check_plan import CheckThing, Place, loads_of

WEIGHTS = "M1"  # what lies there where no class was chosen
_ACROSS = {Place.LEFT: -1.0, Place.RIGHT: 1.0}  # front and back are on the axis of the error


class KnownThings:
    """Makes each thing once, and puts it where the check asks for it."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench
        self._made: dict[CheckThing, Thing] = {}

    def offered(self, procedure: BalanceCheck) -> dict[str, CheckThing]:
        """What lies at hand, by the key of its tile."""
        things = loads_of(procedure.kit) or loads_of(WEIGHTS)
        return {f"known {thing.count}": thing for thing in things}

    def lies(self, thing: CheckThing) -> bool:
        """Whether it is on the pan."""
        return self._made.get(thing) in self._bench.on_pan

    def tap(self, thing: CheckThing, procedure: BalanceCheck) -> None:
        """Take it off the pan, or put it there instead of anything else."""
        was_there = self.lies(thing)
        self._bench.lift()
        if not was_there:
            task = procedure.task
            across = _ACROSS.get(task.place, 0.0) if task else 0.0
            self._bench.put(self._thing(thing), across)

    def _thing(self, thing: CheckThing) -> Thing:
        if thing not in self._made:
            known = thing.known
            assert known is not None
            grams = float(known.grams)
            if thing.kit in COINS:
                self._made[thing] = self._bench.coins(grams / thing.count, thing.count)
            else:
                self._made[thing] = self._bench.check_weight(grams)
        return self._made[thing]
