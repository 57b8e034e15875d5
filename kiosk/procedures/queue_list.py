"""The list of the cup table: whose cup is next, what was noted about which, what can be undone."""

from __future__ import annotations

from datetime import datetime

from kiosk.evidence import Source, Weighing
from kiosk.procedures.procedure import Surroundings
from kiosk.records.round_notes import RoundNote
from kiosk.rounds.contents import CupNote, CupTurn, Protest
from kiosk.rounds.cups import CupMass, Pass, TeamCup, cup_of, cups, ended, queue
from kiosk.rounds.state import RoundState

OUTCOMES = {
    Pass.EMPTY: (CupTurn.SET_ASIDE,),
    Pass.FILLED: (CupTurn.LATE, CupTurn.NOT_HANDED_IN, CupTurn.SET_ASIDE),
}
MISHAPS = (CupTurn.SPILLED_BEFORE, CupTurn.SPILLED_AFTER, CupTurn.CRACKED)


class QueueList:
    """The cups of one sitting in one pass. Every note that is made here has to be kept by others.

    With `again` it is one cup alone, that of this team, which is weighed once more in that
    `protest` although it is handed in; only a mass can come of that.
    `anew` is the team whose cup is weighed empty although the others are handed in: it cracked, or
    nobody weighed it before.
    """

    def __init__(
        self,
        world: Surroundings,
        state: RoundState,
        *,
        sitting: int,
        pass_: Pass,
        again: str = "",
        protest: str = "",
    ) -> None:
        self.sitting = sitting
        self.pass_ = pass_
        self.again, self._protest = again, protest
        self._had = len(cup_of(state, state.team(again)).fillings) if again else 0
        self.anew: str | None = None
        self._world = world
        self._chosen: str | None = None  # before its turn has come
        self._mine: list[RoundNote] = []  # what was noted here and still stands
        self.see(state)

    def see(self, state: RoundState) -> None:
        """Follow the round as it is by now."""
        self.round = state
        self.ended: list[TeamCup] = []  # without a mass, that may be handed in after all
        if self.again:
            self.cups: tuple[TeamCup, ...] = (cup_of(state, state.team(self.again)),)
            self.pending = [cup for cup in self.cups if len(cup.fillings) <= self._had]
            return
        self.cups = cups(state, self.sitting)
        self.pending = queue(self.cups, self.pass_)
        if self.pass_ is Pass.FILLED:
            self.ended = ended(self.cups)

    @property
    def current(self) -> TeamCup | None:
        """Whose turn it is; None when all are done."""
        chosen = [cup for cup in self.choices if cup.team.team == self._chosen]
        return next(iter([*chosen, *self.pending]), None)

    @property
    def choices(self) -> list[TeamCup]:
        """The cups that can be chosen: those that still have to come, then those that ended."""
        return [*self.pending, *self.ended]

    @property
    def outcomes(self) -> tuple[CupTurn, ...]:
        """What can be noted about a cup in this pass instead of a mass."""
        return () if self.again else OUTCOMES[self.pass_]

    @property
    def mishaps(self) -> tuple[CupTurn, ...]:
        """What can have happened to a cup by mischance."""
        return () if self.again else MISHAPS

    @property
    def following(self) -> list[TeamCup]:
        """Those after the current one."""
        current = self.current
        return [cup for cup in self.pending if cup is not current]

    @property
    def weighs_empty(self) -> bool:
        """Whether the current cup is to come empty."""
        return self.pass_ is Pass.EMPTY or self._is_anew

    @property
    def lacks_empty(self) -> bool:
        """Whether the current cup cannot be handed in, since nobody knows what it weighs empty."""
        current = self.current
        return current is not None and current.empty is None and not self.weighs_empty

    @property
    def _is_anew(self) -> bool:
        return self.current is not None and self.current.team.team == self.anew

    def empties(self) -> list[CupMass]:
        """What the other cups weighed empty."""
        current = self.current
        return [cup.empty for cup in self.cups if cup.empty and cup is not current]

    def numbered(self, number: int) -> TeamCup | None:
        """The cup of that number, if it can be chosen."""
        return next((cup for cup in self.choices if cup.team.cup == number), None)

    def choose(self, team: str | None) -> None:
        """Let the cup of that team come before its turn; None: as the list goes."""
        self._chosen = team

    def note(
        self,
        turn: CupTurn,
        *,
        at: datetime,
        weighing: Weighing | None = None,
        zero: Weighing | None = None,
    ) -> RoundNote:
        """Note what happened to the current cup; the list goes on."""
        current = self.current
        assert current is not None
        made = self._make(current.team.team, turn, at, weighing, zero)
        self._mine.append(made)
        self._chosen = None
        if turn in (CupTurn.EMPTY, CupTurn.CRACKED) and self.pass_ is Pass.FILLED:
            self._chosen = current.team.team  # it is handed in right after
        self.anew = current.team.team if turn is CupTurn.CRACKED else None
        return made

    @property
    def last(self) -> TeamCup | None:
        """The cup about which something was noted here last, if that still stands.

        What a decided protest went by stays.
        """
        while self._mine and not self._decided:
            by_about = {f"cup {cup.team.team}": cup for cup in self.cups}
            cup = by_about.get(self._mine[-1].about)
            counting = self.round.cup_notes(cup.team.team) if cup else []
            if cup and counting and counting[-1][0].id == self._mine[-1].id:
                return cup
            self._mine.pop()  # another kiosk noted something since
        return None

    @property
    def _decided(self) -> bool:
        protest = self.round.latest(Protest, f"protest {self._protest}")
        return protest is not None and protest.accepted is not None

    def take_back(self, at: datetime) -> RoundNote | None:
        """Void what was noted last, and let that cup come again; None if there is nothing."""
        last = self.last
        if last is None:
            return None
        self._mine.pop()
        self.anew = None
        self._chosen = last.team.team
        return self._make(last.team.team, CupTurn.UNDONE, at, None, None)

    def _make(
        self,
        team: str,
        turn: CupTurn,
        at: datetime,
        weighing: Weighing | None,
        zero: Weighing | None,
    ) -> RoundNote:
        typed = weighing is not None and weighing.source is Source.TYPED
        content = CupNote(team=team, turn=turn, typed=typed, protest=self._protest)
        made = self.round.next_note(
            content, at=at, new_id=self._world.new_id, weighing=weighing, zero=zero
        )
        self.see(self.round.with_note(made))
        return made
