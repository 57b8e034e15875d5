"""Hands that make a count key at the simulated table: a tray, counted pieces, a jar."""

from __future__ import annotations

from drivers.simulated.materials import PASTA, Material
from drivers.simulated.things import Jar, Tray
from kiosk.procedures.count_samples import SamplesState
from kiosk.procedures.fill_container import ContainerState
from tests.helpers.journey import Journey

RESTED_S = 1.5  # long enough for an emptied tray to be seen


class KeyHands:
    """What the coach does, one deed a method; each ends when the kiosk has seen it."""

    def __init__(self, journey: Journey, material: Material = PASTA) -> None:
        self.journey = journey
        self.material = material
        self.tray: Tray = journey.bench.new_tray()
        self.jar: Jar = journey.bench.new_jar()

    @property
    def state(self) -> object:
        procedure = self.journey.desk.procedure
        return None if procedure is None else procedure.state

    def until_state(self, state: object) -> None:
        self.journey.until(lambda: self.state is state, f"the state {state}")

    def begin(self) -> None:
        """From home to the instruction for the tray."""
        self.journey.tap("Make a count key")
        self.choose_material()

    def choose_material(self) -> None:
        self.journey.tap(self.material.name)
        if self.state is SamplesState.OLD_SAMPLES:
            self.journey.tap("Count anew")
        self.whole_pieces()

    def whole_pieces(self) -> None:
        """Say, if asked, that broken bits do not count; to the instruction for the tray."""
        if self.state is SamplesState.BITS:
            self.journey.tap("No, whole only")
        self.until_state(SamplesState.TRAY_ON)

    def use_old_samples(self) -> None:
        """From home to the instruction for the empty jar, without counting."""
        self.journey.tap("Make a count key")
        self.journey.tap(self.material.name)
        self.until_state(SamplesState.OLD_SAMPLES)
        self.journey.tap("Use them")
        self.journey.tap("Yes, all of it")
        self.journey.tap("as it comes")
        self.until_state(ContainerState.EMPTY_ON)

    def weigh_tray(self) -> None:
        self.journey.bench.put(self.tray)
        self.until_state(SamplesState.COUNT)

    def lay_sample(self, pieces: int = 100) -> None:
        """Empty the tray, let it be seen, count new pieces onto it, wait until it rests."""
        bench = self.journey.bench
        lies_there = self.tray in bench.on_pan and self.state is not SamplesState.COUNT
        if not lies_there:
            self.lift()
        bench.empty(self.tray)
        if lies_there:
            self.until_state(SamplesState.COUNT)
        else:
            bench.put(self.tray)
            self.journey.wait(RESTED_S)
        self.add(pieces)

    def add(self, pieces: int = 100) -> None:
        """Count pieces onto the tray, to those that lie there, wait until it rests."""
        self.journey.bench.count_onto(self.tray, pieces, self.material)
        self.until_state(SamplesState.READY)

    def keep(self) -> None:
        """Touch the button that keeps the sample on the pan."""
        main = self.journey.scene.sheet.main
        assert main is not None
        self.journey.tap(main.text)

    def sample(self, pieces: int = 100) -> None:
        self.lay_sample(pieces)
        self.keep()

    def all_samples(self) -> None:
        """Tray and three samples, until their spread is shown."""
        self.weigh_tray()
        for _ in range(3):
            self.sample()
        self.until_state(SamplesState.SPREAD)

    def go_to_jar(self, *, counted_inside: bool = False, goal: str = "as it comes") -> None:
        """From the spread to the instruction for the empty jar."""
        self.journey.tap("Go on")
        self.journey.tap("Yes, in the jar" if counted_inside else "No")
        if self.state is ContainerState.GOAL:  # after more samples it is known
            self.journey.tap(goal)
        self.lift()
        self.until_state(ContainerState.EMPTY_ON)

    def weigh_jar(self) -> None:
        self.journey.bench.put(self.jar)
        self.until_state(ContainerState.POUR)

    def pour(self, grams: float) -> None:
        """Pour so much in and wait until it rests."""
        bench = self.journey.bench
        bench.pour(self.jar, self.material, grams=grams)
        self.journey.until(lambda: not bench.pouring, "the end of the pour")
        self.until_state(ContainerState.STILL)

    def to_pour(self) -> None:
        """From home to the jar that is being filled."""
        self.begin()
        self.all_samples()
        self.go_to_jar()
        self.weigh_jar()

    def to_key(self, grams: float = 600) -> None:
        """From home to the finished key."""
        self.to_pour()
        self.pour(grams)
        self.finish()

    def finish(self) -> None:
        """From the full jar to the finished key; all of it is of one bag."""
        self.journey.tap("Stop here")
        if self.state is ContainerState.BAGS:
            self.journey.tap("Yes, all of it")
        self.until_state(ContainerState.KEY)

    def lift(self) -> None:
        self.journey.clear()
