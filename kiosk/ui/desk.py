"""The desk: one running procedure between the pan, the person, the records and the screen.

Everything here runs in the screen's thread and knows no widget. Pan events and presses go in;
finished views come out by `view()`. What was captured is handed to the writer first, and the
screen is told only when it is written down, so that what stands on the screen survives anything.
"""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from enum import Enum
from typing import TYPE_CHECKING

from kiosk.procedures.balance_check import BalanceCheck, CheckState
from kiosk.procedures.check_jars import CheckJars
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.guess import Guess, GuessState
from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.key_procedure import KeyProcedure
from kiosk.procedures.measure import Measure
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import (
    Effect,
    Person,
    PersonEvent,
    Procedure,
    Surroundings,
    WeighAgain,
)
from kiosk.procedures.show_answer import Answer, ShowAnswer
from kiosk.procedures.throw_away import ThrowAway
from kiosk.procedures.volume_draft import VolumeDraft
from kiosk.procedures.weigh_empty import WeighEmpty, WeighEmptyState
from kiosk.records.entries import BalanceChecked, CupOut, Entry
from kiosk.records.jar_entries import ClosedJar
from kiosk.records.kept import Guessed
from kiosk.records.kinds import JAR
from kiosk.records.writer import Writer
from kiosk.ui.lock import Asking, Lock
from kiosk.ui.notebook import Notebook
from kiosk.ui.presenters.scale_views import LOOK_AGAIN
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.scale_drawer import ScaleDrawer
from kiosk.ui.teaching import Teaching
from kiosk.weighing.pan_events import PanEvent, PanKind

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may


CODE = "coach_code"  # under which its digest is remembered
_COMING = frozenset({PanKind.LOAD_PLACED, PanKind.SETTLED})


class Place(Enum):
    """Where the kiosk is while no procedure runs."""

    HOME = "home"
    TEAMS = "teams"
    MATERIALS = "materials"
    SCALE = "scale"
    SCALES = "scales"
    TEACH = "teach"
    CODE = "code"


_NOTHING_BEGUN = (SamplesState.RESUME, SamplesState.MATERIAL)
COACHS_PLACES = frozenset({Place.SCALE, Place.SCALES, Place.TEACH, Place.CODE})
COACHS_PROCEDURES = (KeyProcedure, Measure, ThrowAway, BalanceCheck, ShowAnswer, CheckJars)


class Desk:
    """`changed` is called when there may be something new to show."""

    def __init__(
        self,
        *,
        facts: TableFacts,
        world: Surroundings,
        writer: Writer,
        weigh_again: Callable[[], None],
        changed: Callable[[], None],
    ) -> None:
        self.facts = facts
        self.world = world
        self.place = Place.HOME
        self.procedure: Procedure | None = None
        self.memory = PanMemory()
        self.notebook = Notebook(writer, facts, changed)
        self.ready = False
        self._weigh_again = weigh_again
        self._changed = changed
        self.drawer: ScaleDrawer | None = None
        self.lock = Lock(closes_after=facts.settings.coach_idle_s, open=True)
        self.guessing = ""  # the kind of container that pairs guess; "" while they fill cups
        self.drawer_label = ""
        self._behind: Callable[[], None] | None = None  # what the code opens
        self._missed: list[PanEvent] = []  # on the pan, while nothing could be written down

    # Opening ---------------------------------------------------------------------------------

    def open(self) -> None:
        """Read what is kept: the cups that are out, the last choices, the keys."""
        simulated = self.facts.simulated

        def read(store: Store) -> tuple[list[CupOut], str | None, list[str], list[str], str]:
            letters = [key.made.letter for key in store.keys(simulated)]
            boxes = [str(volume.made.number) for volume in store.volumes()]
            code = store.recall(CODE) or ""
            return store.cups_out(simulated), store.recall("material"), letters, boxes, code

        def done(kept: tuple[list[CupOut], str | None, list[str], list[str], str]) -> None:
            self.facts.cups, material, letters, boxes, self.lock.digest = kept
            self.facts.used_boxes = tuple(boxes)
            self.facts.material = material or self.facts.settings.materials[0]
            self.facts.used_letters = tuple(letters)
            self.facts.keys_kept = len(letters)
            self.ready = True

        self.notebook.look_up(read, done)

    @property
    def settled_for_showing(self) -> bool:
        """False while something captured is not yet written down."""
        return self.notebook.up_to_date

    @property
    def failure(self) -> str | None:
        """Why something could not be written down, None while all is well."""
        return self.notebook.failure

    @property
    def may_leave(self) -> bool:
        """Whether a failure can be left behind without losing anything."""
        return self.ready and self.notebook.droppable

    # The pan ---------------------------------------------------------------------------------

    def pan_event(self, event: PanEvent) -> None:
        """Take what happened on the pan."""
        self.memory.note(event)
        if self.coach_side and self.lock.open:
            self.lock.seen(self.world.now())
        if self.failure is not None:
            self._missed.append(event)
        elif self.procedure is not None:
            self._carry_out(self.procedure.step(event))
        elif self._somebody_came(event):
            self.hand_in(None)
        self._changed()

    def _somebody_came(self, event: PanEvent) -> bool:
        return (
            self.place is Place.HOME
            and self.ready
            and event.kind is PanKind.LOAD_PLACED
            and bool(self.facts.cups)
        )

    # The person ------------------------------------------------------------------------------

    def press(self, event: PersonEvent) -> None:
        """Take a press. One that the state does not offer came from a finger that was late."""
        if self.failure is not None or not self.settled_for_showing:
            return
        if self.lock.open and self.coach_side:
            self.lock.seen(self.world.now())
        if self.procedure is not None and self.procedure.offers(event.kind):
            self._carry_out(self.procedure.step(event))
            self._changed()

    def go_home(self) -> None:
        """Leave the choice of a pair or a material, or what the records refuse for good."""
        if self.failure is not None:
            if not self.may_leave:
                return
            self.notebook.drop()
            self._missed.clear()
            self.procedure = None
            self.open()  # the table as the records have it by now
        self.place = Place.HOME
        self._changed()

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
            return store.jars_to_guess(simulated) if kind == JAR else store.boxes_to_guess()

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
                for volume in store.volumes()
            }
            return [
                Answer(
                    container=each,
                    actual=Decimal(bounds[each.key_id][0]),
                    low=Decimal(bounds[each.key_id][1]),
                    high=Decimal(bounds[each.key_id][2]),
                    guesses=tuple(store.guesses(each.key_id)),
                )
                for each in (*store.jars_to_guess(simulated), *store.boxes_to_guess())
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

        def start(draft: KeyDraft | None) -> None:
            self._start(CountSamples(self.world, pan=self.memory, draft=draft))

        self.notebook.look_up(lambda store: KeyDraft.from_records(store.open_key(simulated)), start)

    def measure_box(self) -> None:
        """The coach measures a box: one that was left is offered first."""
        if not self._free():
            return
        self.facts.covered = False

        def start(draft: VolumeDraft | None) -> None:
            self._start(Measure(self.world, pan=self.memory, draft=draft))

        self.notebook.look_up(lambda store: VolumeDraft.from_records(store.open_volume()), start)

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

    def throw_away(self) -> None:
        """The coach takes a cup off the list that will not come back."""
        if self._free() and self.facts.cups:
            self._start(ThrowAway(self.world, cups=self.facts.cups, pan=self.memory))

    # The coach's code --------------------------------------------------------------------------

    @property
    def coach_side(self) -> bool:
        """Whether what is shown, or hidden behind the code, is the coach's."""
        if self.procedure is not None:
            return isinstance(self.procedure, COACHS_PROCEDURES)
        return self.place in COACHS_PLACES

    @property
    def locked(self) -> bool:
        """Whether the code is asked for."""
        return self.coach_side and not self.lock.open

    def as_coach(self, label: str, then: Callable[[], None]) -> None:
        """Open the drawer of that label, after the code if it is locked."""
        if not self._free():
            return
        if self.lock.open:
            self.lock.seen(self.world.now())
            then()
            return
        self.lock.ask()
        self.drawer_label, self._behind = label, then
        self._go(Place.CODE)

    def code_press(self, event: PersonEvent) -> None:
        """A press on the sheet that asks for the code."""
        lock, now = self.lock, self.world.now()
        match event.kind:
            case Person.TYPE:
                lock.type(event.value, now)
            case Person.RUB_OUT:
                lock.rub_out()
            case Person.ENTER:
                chosen = lock.asking is not Asking.CODE
                if lock.enter(now):
                    if chosen:
                        self.notebook.remember(CODE, lock.digest)
                    self._unlocked()
            case Person.LATER if not lock.digest:
                lock.open_now(now)
                self._unlocked()
            case Person.HOME:
                self.procedure, self._behind = None, None  # what was kept is kept
                self.place = Place.HOME
        self._changed()

    def _unlocked(self) -> None:
        behind, self._behind = self._behind, None
        if self.place is Place.CODE:
            self.place = Place.HOME
        if behind is not None:
            behind()

    def tick(self, now: float) -> None:
        """Let time pass: the coach's side locks itself."""
        if self.lock.tick(now) and self.coach_side:
            self.lock.ask()
            self.drawer_label, self._behind = "", None
        if self.drawer is not None and self.place is not Place.TEACH:
            self.drawer.end_teaching()  # however its sheet was left

    # The scale ---------------------------------------------------------------------------------

    def open_scale(self) -> None:
        """The coach opens the drawer of the scale."""
        self._go(Place.SCALE)

    def ask_for_scale(self) -> None:
        """Let the coach say which of the scales that were found is to be used."""
        self.as_coach("home.scale", lambda: self._go(Place.SCALES))

    def other_scales(self) -> None:
        """Show what else could be used."""
        if self._free() and self.drawer is not None:
            self.drawer.look_around()
            self._go(Place.SCALES)

    @property
    def teaching(self) -> Teaching | None:
        """The teaching of a scale, while its sheet lies out."""
        return self.drawer.teaching if self.drawer and self.place is Place.TEACH else None

    def teach_scale(self) -> None:
        """Learn how the scale speaks that was chosen."""
        if self.drawer is not None and self._free():
            self.drawer.teach()
            if self.drawer.teaching is not None:
                self._go(Place.TEACH)

    def teach_press(self, event: PersonEvent) -> None:
        """A press on the sheet of teaching; leaving it, the scale is used as it was learned."""
        if self.drawer is None or self.teaching is None:
            return
        if event.kind is Person.HOME:
            self.drawer.end_teaching()
            self.place = Place.SCALE
        else:
            self.teaching.press(event)
        self._changed()

    def check_scale(self) -> None:
        """See whether the scale is right, with what is at hand."""
        if self._free():
            self._start(BalanceCheck(self.world, pan=self.memory))

    def read_last_check(self, balance: str) -> None:
        """Look up how the last check of that scale went."""
        simulated = self.facts.simulated
        self.facts.last_check = None

        def done(found: BalanceChecked | None) -> None:
            self.facts.last_check = found

        self.notebook.look_up(lambda store: store.last_check(balance, simulated), done)

    def scale_chosen(self, where: str) -> None:
        """Weigh on that scale from now on; LOOK_AGAIN looks for others."""
        if self.drawer is None or not self._free():
            return
        if where == LOOK_AGAIN:
            self.drawer.look_around()
            return
        self.drawer.choose(where)
        if not self.facts.scale.problem:
            self.place = Place.SCALE
        self._changed()

    def scale_changed(self, *, simulated: bool) -> None:
        """Another scale is in use: nothing is known of its pan, and its records are others."""
        self.memory.forget()
        self.facts.readability = None
        if simulated is not self.facts.simulated:
            self.facts.simulated = simulated
            self.facts.team = None
            self.ready = False
            self.open()

    def cover(self) -> None:
        """Cover or show the big number of a key."""
        self.facts.covered = not self.facts.covered
        self._changed()

    def letter_chosen(self, letter: str) -> None:
        """The letter that the jar will get."""
        self.facts.letter = letter
        self._changed()

    # Between procedures ----------------------------------------------------------------------

    def _free(self) -> bool:
        return self.ready and self.failure is None and self.settled_for_showing

    def _go(self, place: Place) -> None:
        if self._free():
            self.place = place
            self._changed()

    def _start(self, procedure: Procedure) -> None:
        self.procedure = procedure
        self._carry_out(procedure.take_effects())
        self._changed()

    def _carry_out(self, effects: list[Effect]) -> None:
        entries = [effect for effect in effects if isinstance(effect, Entry)]
        if entries:
            self.notebook.write(entries)
        if any(isinstance(effect, WeighAgain) for effect in effects):
            self._weigh_again()
        if self.procedure is not None and self.procedure.ended:
            self._after(self.procedure)

    def _after(self, ended: Procedure) -> None:
        self.procedure = None
        self.place = Place.HOME
        match ended.state:
            case CheckState.CHECKED:
                self.place = Place.SCALE
            case WeighEmptyState.NEXT | GuessState.NEXT:
                self.place = Place.TEAMS
            case WeighEmptyState.SOMEBODY_ELSE | HandInState.SOMEBODY_ELSE:
                if self.facts.cups:
                    self.hand_in(None)
            case HandInState.NEXT:
                self.guessing = ""
                self.team_chosen(self.facts.team or "")
            case SamplesState.SAMPLED:
                assert isinstance(ended, CountSamples)
                self._start(FillContainer(self.world, pan=self.memory, draft=ended.kept))
            case ContainerState.CLOSING:
                assert isinstance(ended, FillContainer)
                self._weigh_closed(ended.letter or "")
            case ContainerState.SAMPLES:
                assert isinstance(ended, FillContainer)
                samples = CountSamples(self.world, pan=self.memory, draft=ended.kept, go_on=True)
                self._start(samples)

    def try_again(self) -> None:
        """Write down what could not be written down, then catch up with the pan."""
        self.notebook.try_again()
        missed, self._missed = self._missed, []
        for event in missed:
            # What came onto the pan meanwhile is judged afresh, after this was seen.
            if self.procedure is not None and event.kind not in _COMING:
                self._carry_out(self.procedure.step(event))
        if self.memory.loaded and not self.memory.used:
            self._weigh_again()
        self._changed()
