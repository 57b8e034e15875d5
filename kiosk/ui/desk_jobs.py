"""How each job of the desk begins: what is looked up first, the procedure made of it."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

from kiosk.procedures.check_jars import CheckJars
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.measure import Measure
from kiosk.procedures.measure_water import MeasureWater
from kiosk.procedures.show_answer import Answer, ShowAnswer
from kiosk.procedures.throw_away import ThrowAway
from kiosk.procedures.volume_draft import VolumeDraft
from kiosk.procedures.water_draft import WaterDraft
from kiosk.records import kept
from kiosk.records.jar_entries import ClosedJar
from kiosk.records.round_notes import StoredRound
from kiosk.records.volume_entries import Shape
from kiosk.ui.desk_base import Place
from kiosk.ui.desk_practice import PracticeDesk, outside_of_rounds
from kiosk.ui.pages.all_rounds import AllRoundsPage

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may


_NOTHING_BEGUN = (SamplesState.RESUME, SamplesState.MATERIAL)


class JobsDesk(PracticeDesk):
    """One method a job; those that look something up begin when the answer has come."""

    def show_answers(self) -> None:
        """The coach opens what was guessed."""
        if not self._free():
            return
        simulated = self.facts.simulated

        def read(store: Store) -> list[Answer]:
            bounds = {
                key.made.key_id: (key.made.count, key.made.low, key.made.high)
                for key in store.keys(simulated)
            } | {
                volume.made.key_id: (volume.made.cm3, volume.made.low, volume.made.high)
                for volume in store.volumes(simulated)
            }
            return [
                Answer(
                    container=each,
                    actual=Decimal(bounds[each.key_id][0]),
                    low=Decimal(bounds[each.key_id][1]),
                    high=Decimal(bounds[each.key_id][2]),
                    guesses=tuple(store.guesses(each.key_id)),
                )
                for each in outside_of_rounds(
                    store,
                    [*store.jars_to_guess(simulated), *store.boxes_to_guess(simulated)],
                    simulated,
                )
            ]

        def start(answers: list[Answer]) -> None:
            self._start(ShowAnswer(self.world, answers=answers, pan=self.memory))

        self.notebook.look_up(read, start)

    def make_count_key(self) -> None:
        """The coach opens the drawer: a key that was left is offered first."""
        if not self._free():
            return
        simulated = self.facts.simulated
        self.facts.covered = False

        def read(store: Store) -> tuple[KeyDraft | None, dict[str, KeyDraft]]:
            left = KeyDraft.from_records(store.open_key(simulated))
            made = [KeyDraft.from_records(key.draft) for key in store.keys(simulated)]
            return left, {draft.material: draft for draft in made if draft and draft.enough}

        def start(found: tuple[KeyDraft | None, dict[str, KeyDraft]]) -> None:
            draft, known = found
            self._start(CountSamples(self.world, pan=self.memory, draft=draft, known=known))

        self.notebook.look_up(read, start)

    def measure_box(self) -> None:
        """The coach measures a box: one that was left is offered first."""
        if not self._free():
            return
        self.facts.covered = False

        simulated = self.facts.simulated

        def start(left: kept.VolumeDraft | None) -> None:
            if left is not None and left.shape == Shape.WATER:
                water = WaterDraft.from_records(left)
                self._start(MeasureWater(self.world, pan=self.memory, draft=water))
            else:
                draft = VolumeDraft.from_records(left)
                self._start(Measure(self.world, pan=self.memory, draft=draft))

        self.notebook.look_up(lambda store: store.open_volume(simulated), start)

    def check_jars(self) -> None:
        """The coach sees whether closed jars are still the same, instead of making a key."""
        asking = self.procedure is not None and self.procedure.state in _NOTHING_BEGUN
        if not asking or not self._free():
            return
        simulated = self.facts.simulated

        def start(jars: list[ClosedJar]) -> None:
            self._start(CheckJars(self.world, jars=jars, pan=self.memory))

        self.notebook.look_up(lambda store: store.closed_jars(simulated), start)

    def _weigh_closed(self, letter: str) -> None:
        simulated = self.facts.simulated

        def start(jars: list[ClosedJar]) -> None:
            self._start(CheckJars(self.world, jars=jars, pan=self.memory, sealing=letter))

        self.notebook.look_up(lambda store: store.closed_jars(simulated), start)

    def run_round(self, *, helper: bool = False) -> None:
        """The coach opens a round, or a new one; a helper finds the pages for helpers only."""
        if not self._free():
            return
        simulated = self.facts.simulated

        def start(found: list[StoredRound]) -> None:
            self.room.close()
            self.room.helper = helper
            self.room.open(AllRoundsPage(self.room, found))
            self.place = Place.ROUND

        self.notebook.look_up(lambda store: store.rounds(simulated), start)

    def throw_away(self) -> None:
        """The coach takes a cup off the list that will not come back."""
        if self._free() and self.facts.cups:
            self._start(ThrowAway(self.world, cups=self.facts.cups, pan=self.memory))
