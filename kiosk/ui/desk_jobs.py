"""How each job of the desk begins: what is looked up first, the procedure made of it."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

from kiosk.procedures.check_jars import CheckJars
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.guess import Guess
from kiosk.procedures.hand_in import HandIn
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.measure import Measure
from kiosk.procedures.measure_water import MeasureWater
from kiosk.procedures.show_answer import Answer, ShowAnswer
from kiosk.procedures.throw_away import ThrowAway
from kiosk.procedures.volume_draft import VolumeDraft
from kiosk.procedures.water_draft import WaterDraft
from kiosk.procedures.weigh_empty import WeighEmpty
from kiosk.records import kept
from kiosk.records.jar_entries import ClosedJar
from kiosk.records.kept import Guessed
from kiosk.records.kinds import JAR
from kiosk.records.round_notes import StoredRound
from kiosk.records.volume_entries import Shape
from kiosk.rounds.bound import TOLD_BY, in_a_round
from kiosk.rounds.state import RoundState
from kiosk.ui.desk_base import Place
from kiosk.ui.desk_coach import CoachsDesk
from kiosk.ui.pages.all_rounds import AllRoundsPage

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may


_NOTHING_BEGUN = (SamplesState.RESUME, SamplesState.MATERIAL)


def _outside_of_rounds(store: Store, every: list[Guessed], simulated: bool) -> list[Guessed]:
    """Those that are in no round: it has guesses and answers of its own."""
    states = [
        RoundState.of(store.round_notes(each.id, kinds=TOLD_BY))
        for kind in {simulated, False}  # boxes that were measured are real, whatever the scale
        for each in store.rounds(kind)
    ]
    bound = in_a_round(states)
    return [each for each in every if each.key_id not in bound]


class JobsDesk(CoachsDesk):
    """One method a job; those that look something up begin when the answer has come."""

    def fill_cup(self) -> None:
        """Ask which pair wants to fill a cup."""
        self.guessing = ""
        self._go(Place.TEAMS)

    def guess(self, kind: str) -> None:
        """Ask which pair wants to guess a container of that kind."""
        self.guessing = kind
        self._go(Place.TEAMS)

    def choose_material(self) -> None:
        """Ask what goes into the cups."""
        self._go(Place.MATERIALS)

    def material_chosen(self, material: str) -> None:
        """Remember what goes into the cups, for this pair and the next ones."""
        self.facts.material = material
        self.notebook.remember("material", material)
        self._go(Place.TEAMS)

    def turn_page(self) -> None:
        """Show the next pairs."""
        self.facts.team_page += 1
        self._changed()

    def team_chosen(self, team: str) -> None:
        """A pair said who it is: its cup that is out comes back, or an empty one is weighed."""
        if not self._free():
            return
        self.facts.team = team
        if self.guessing:
            self._guess(team)
            return
        out = [cup for cup in self.facts.cups if team and cup.team == team]
        if out:
            self.hand_in(out[-1].number)
            return
        simulated = self.facts.simulated

        def start(number: int) -> None:
            self._start(
                WeighEmpty(
                    self.world,
                    number=number,
                    team=team,
                    material=self.facts.material,
                    others_out=bool(self.facts.cups),
                    pan=self.memory,
                )
            )

        self.notebook.look_up(lambda store: store.next_cup_number(simulated), start)

    def _guess(self, team: str) -> None:
        simulated, kind = self.facts.simulated, self.guessing
        rules = self.facts.settings.rules
        limit = rules.count_limit if kind == JAR else rules.volume_limit_cm3

        def read(store: Store) -> list[Guessed]:
            jar = kind == JAR
            every = store.jars_to_guess(simulated) if jar else store.boxes_to_guess(simulated)
            return _outside_of_rounds(store, every, simulated)

        def start(found: list[Guessed]) -> None:
            self._start(
                Guess(
                    self.world, team=team, containers=found, limit=limit, pan=self.memory, kind=kind
                )
            )

        self.notebook.look_up(read, start)

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
                for each in _outside_of_rounds(
                    store,
                    [*store.jars_to_guess(simulated), *store.boxes_to_guess(simulated)],
                    simulated,
                )
            ]

        def start(answers: list[Answer]) -> None:
            self._start(ShowAnswer(self.world, answers=answers, pan=self.memory))

        self.notebook.look_up(read, start)

    def hand_in(self, number: int | None) -> None:
        """A filled cup comes back."""
        if self._free():
            self._start(HandIn(self.world, cups=self.facts.cups, number=number, pan=self.memory))

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
