"""The students' side of the desk: cups to fill and to hand in, jars and boxes to guess."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING

from kiosk.procedures.guess import Guess
from kiosk.procedures.hand_in import HandIn
from kiosk.procedures.weigh_empty import WeighEmpty
from kiosk.records.kept import Guessed
from kiosk.records.kinds import JAR
from kiosk.records.round_notes import NoteKind
from kiosk.rounds import bound, clock
from kiosk.rounds.state import RoundState
from kiosk.ui.desk_base import Place
from kiosk.ui.desk_coach import CoachsDesk

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may


def outside_of_rounds(store: Store, every: list[Guessed], simulated: bool) -> list[Guessed]:
    """Those that are in no round: it has guesses and answers of its own."""
    states = [
        RoundState.of(store.round_notes(each.id, kinds=bound.TOLD_BY))
        for kind in {simulated, False}  # boxes that were measured are real, whatever the scale
        for each in store.rounds(kind)
    ]
    told = bound.in_a_round(states)
    return [each for each in every if each.key_id not in told]


def _somebody_works(store: Store, simulated: bool, now: datetime) -> bool:
    """Whether teams of any round are at work at that moment (UTC)."""
    for each in store.rounds(simulated):
        clocks = RoundState.of(store.round_notes(each.id, kinds=clock.TOLD_BY))
        if not clocks.readable:  # a newer version opened it
            continue
        if clock.somebody_works(clocks, now):
            return True
        if clock.lately(clocks, now):  # somebody may have extra time: that takes all teams
            kinds = (*clock.TOLD_BY, NoteKind.TEAM)
            whole = RoundState.of(store.round_notes(each.id, kinds=kinds))
            if clock.somebody_works(whole, now):
                return True
    return False


ROUND_SEEN_S = 20.0  # between two looks whether a round that runs is over


class PracticeDesk(CoachsDesk):
    """What students begin; `_let_on` while the coach lets them weigh beside a round that runs."""

    _let_on = False
    _round_runs = False  # when the records were asked last
    _rounds_seen_at = 0.0
    _behind_round: Callable[[], None] = staticmethod(lambda: None)

    def open(self) -> None:
        """Read what is kept, and whether a round is running."""
        super().open()
        self.see_rounds()

    def leave_room(self) -> None:
        """Back to the table: the round may be running by now."""
        super().leave_room()
        self.see_rounds()

    def _leave_locked(self) -> None:
        super()._leave_locked()
        self.see_rounds()

    def tick(self, now: float) -> None:
        """Let time pass: a round that runs ends by itself."""
        super().tick(now)
        if self._round_runs and now - self._rounds_seen_at > ROUND_SEEN_S:
            self.see_rounds()

    def see_rounds(self) -> None:
        """Look whether a round is running, without making anybody wait."""
        simulated, at = self.facts.simulated, self.room.now_utc()
        self._rounds_seen_at = self.world.now()

        def done(works: bool) -> None:
            self._round_runs = works

        self.notebook.glance(lambda store: _somebody_works(store, simulated, at), done)

    @property
    def pan_closed(self) -> bool:
        """Whether the table hides the pan: a filled cup of a running round would tell its mass."""
        place = self.place in (Place.HOME, Place.TEAMS, Place.MATERIALS)
        at_table = place if self.procedure is None else isinstance(self.procedure, Guess)
        return self.place is Place.ROUND_RUNS or (self._round_runs and at_table)

    def fill_cup(self) -> None:
        """Ask which pair wants to fill a cup."""
        self.guessing, self._let_on = "", False
        self._between_rounds(self._ask_who)

    def _ask_who(self) -> None:
        self.place = Place.TEAMS
        self._changed()

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
        self._between_rounds(self._fill_or_hand_in)

    def _fill_or_hand_in(self) -> None:
        team, simulated = self.facts.team or "", self.facts.simulated
        out = [cup for cup in self.facts.cups if team and cup.team == team]
        if out:
            self._hand_in(out[-1].number)
            return

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
            return outside_of_rounds(store, every, simulated)

        def start(found: list[Guessed]) -> None:
            self._start(
                Guess(
                    self.world, team=team, containers=found, limit=limit, pan=self.memory, kind=kind
                )
            )

        self.notebook.look_up(read, start)

    def hand_in(self, number: int | None) -> None:
        """A filled cup comes back."""
        self._let_on = False
        self._between_rounds(lambda: self._hand_in(number))

    def _hand_in(self, number: int | None) -> None:
        self._start(HandIn(self.world, cups=self.facts.cups, number=number, pan=self.memory))

    def _between_rounds(self, then: Callable[[], None]) -> None:
        """Go on, but not with the cups of a round while its teams work: the coach may."""
        if not self._free():
            return
        simulated, now = self.facts.simulated, self.room.now_utc()

        def done(works: bool) -> None:
            self._round_runs = works
            if works and not self._let_on:
                self._behind_round, self.place = then, Place.ROUND_RUNS
                self._changed()
            else:
                then()

        # Records that are away stop no cup: what they said last has to do.
        self.notebook.look_up_or(
            lambda store: _somebody_works(store, simulated, now), done, self._round_runs
        )

    def let_on(self) -> None:
        """The coach lets somebody weigh here while a round runs, after the code."""

        def then() -> None:
            self._let_on = True
            self._behind_round()

        self.as_coach("home.fill_cup", then)
