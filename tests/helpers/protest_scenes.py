"""Protests as scenes, and questions about cups: weighed again, undecided, decided, final."""

from __future__ import annotations

from collections.abc import Callable

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.records.round_notes import RoundNote
from kiosk.rounds.contents import CupNote, CupTurn, Protest, Stage, Step
from kiosk.rounds.cups import Pass
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Task, Weighed
from kiosk.ui.pages.cups import CupsPage, choose_cup
from kiosk.ui.pages.evidence import EvidencePage
from kiosk.ui.pages.page import Page
from kiosk.ui.pages.protests import ProtestsPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.scene import Scene
from tests.helpers.page_scenes import shown
from tests.helpers.queue_scenes import NAMES, a_round
from tests.helpers.result_rounds import played
from tests.helpers.room import BareDesk
from tests.helpers.round_notes import DIVISION, said, weighed_again

WORDS = "the mass is wrong, the scale stood crooked when we came to it"
PROTEST = Protest(protest="p", team="hummingbirds", task=Task.MASS, text=WORDS)
TEAMS = ("Hummingbirds", "Wren", "Yellowhammers")


class KeptNotes:
    """Records that hold one round."""

    def __init__(self, state: RoundState) -> None:
        found = [said for chain in state.chains.values() for said in chain]
        self._notes = [each.note for each in sorted(found, key=lambda each: each.place)]

    def round_notes(self, _round_id: str, _after: str = "") -> list[RoundNote]:
        return self._notes


def in_room(state: RoundState, page: Callable[[Room], Page]) -> Room:
    """That page lies in front."""
    room = Room(BareDesk(KeptNotes(state)))  # type: ignore[arg-type]  # as much as pages ask for
    room.read(state.id)
    room.open(page(room))
    return room


def protested(counts: Weighed = Weighed.LAST, *, accepted: bool | None = None) -> RoundState:
    """The cup of a protest was weighed again; then this was decided."""
    state = played(TEAMS, Rules(weighed_again=counts), steps=(Stage.LOCKED, Stage.RELEASED))
    state = weighed_again(said(state, PROTEST), PROTEST.team, "116.0")
    if accepted is None:
        return state
    return said(state, PROTEST.model_copy(update={"accepted": accepted, "reason": WORDS}))


def final() -> RoundState:
    return said(protested(accepted=False), Step(division=DIVISION, stage=Stage.FINAL))


def evidence(state: RoundState) -> Room:
    return in_room(state, lambda room: EvidencePage(room, PROTEST.protest))


def deciding(counts: Weighed) -> Room:
    room = evidence(protested(counts))
    room.press(PersonEvent(Person.GO_ON))
    return room


def early() -> Room:
    """Filled cups come before the clock of their sitting was started."""
    room = in_room(a_round(empties=True), CupsPage)
    room.press(PersonEvent(Person.CHOOSE, (1, Pass.FILLED)))
    return room


def typing() -> Room:
    """Which cup is typed, where one of them ended without a mass."""
    state = a_round(empties=True)
    for name in NAMES[1:]:
        state = said(state, CupNote(team=name.lower(), turn=CupTurn.NOT_HANDED_IN))
    room = in_room(state, CupsPage)
    choose_cup(room)
    return room


def scenes() -> dict[str, Callable[[], Scene]]:
    """By name, made when they are wanted."""
    made: dict[str, Callable[[], Room]] = {
        "evidence, weighed again": lambda: evidence(protested()),
        "evidence, the first counts": lambda: evidence(protested(Weighed.FIRST)),
        "evidence, accepted": lambda: evidence(protested(accepted=True)),
        "evidence, final": lambda: evidence(final()),
        "protest, decide": lambda: deciding(Weighed.LAST),
        "protest, decide, the first counts": lambda: deciding(Weighed.FIRST),
        "protests, final": lambda: in_room(final(), lambda room: ProtestsPage(room, DIVISION)),
        "cups, before the start": early,
        "cups, typed": typing,
    }
    return {name: lambda make=make: shown(make().view()) for name, make in made.items()}  # type: ignore[misc]  # bound at once
