"""The coach's side of a round is closed while helpers work at it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.records.entries import new_id
from kiosk.records.store import Store
from kiosk.ui.desk import Desk
from kiosk.ui.desk_base import Place
from kiosk.ui.lock import CODE, HELPER_CODE, TRIES, digest_of
from kiosk.ui.pages.codes import CodePage
from kiosk.ui.pages.common import AskPage
from kiosk.ui.pages.hub import HubPage
from kiosk.ui.pages.own_answers import OwnAnswersPage
from kiosk.ui.pages.page import Page, Role
from kiosk.ui.pages.paper_typing import SheetsPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.scene import scene_of
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import CodeView
from kiosk.ui.screens.frame import WIDE
from kiosk.weighing.pan_watch import PanPhase, PanState
from tests.helpers.held_writer import HeldWriter
from tests.helpers.pan import surroundings
from tests.helpers.result_rounds import BIRDS
from tests.helpers.round_notes import with_teams

COACHS, HELPERS = "271828", "314159"
SALT = b"salt"


class Kiosk:
    """A desk with a round in its records, opened by the coach."""

    def __init__(self, store: Store, helper: str) -> None:
        state = with_teams(BIRDS)
        store.save(*(said.note for chain in state.chains.values() for said in chain))
        store.remember(CODE, digest_of(COACHS, SALT))
        store.remember(HELPER_CODE, helper)
        self.now = 0.0
        self._writer = HeldWriter(store)
        self.desk = Desk(
            facts=TableFacts(simulated=True),
            world=replace(surroundings(), new_id=new_id, now=lambda: self.now),
            writer=self._writer,  # type: ignore[arg-type]  # as much of one as a desk needs
            weigh_again=lambda: None,
            changed=lambda: None,
        )
        self.desk.open()
        self._writer.answer()
        self.desk.lock.open_now(0.0)
        self.desk.run_round()
        self._writer.answer()
        self.press(Person.CHOOSE, state.id)

    def press(self, kind: Person, value: object = None) -> None:
        self.desk.room_press(PersonEvent(kind, value))
        self._writer.answer()

    def answer(self) -> None:
        self._writer.answer()

    def wait(self, seconds: float) -> None:
        self.now += seconds
        self.desk.tick(self.now)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    with closing(Store(str(tmp_path / "records"))) as store:
        yield store


def test_a_helpers_presses_do_not_keep_the_coachs_side_open(store: Store) -> None:
    kiosk = Kiosk(store, helper="")
    kiosk.press(Person.CHOOSE, "answers")
    for _ in range(3):
        kiosk.wait(kiosk.desk.lock.closes_after / 2)
        kiosk.press(Person.MORE)
    kiosk.press(Person.HOME)
    assert isinstance(kiosk.desk.room.page, HubPage)
    assert kiosk.desk.locked


def test_where_helpers_have_a_code_the_coachs_side_closes_behind_them(store: Store) -> None:
    kiosk = Kiosk(store, helper=digest_of(HELPERS, SALT))
    kiosk.press(Person.CHOOSE, "answers")
    assert isinstance(kiosk.desk.room.page, SheetsPage)
    assert kiosk.desk.room.role is Role.HELPER
    assert not kiosk.desk.locked  # the helper goes on
    kiosk.press(Person.HOME)
    assert kiosk.desk.locked


def test_a_coach_who_types_alone_comes_back_without_a_code(store: Store) -> None:
    kiosk = Kiosk(store, helper="")
    kiosk.press(Person.CHOOSE, "answers")
    kiosk.press(Person.HOME)
    assert not kiosk.desk.locked


def test_leaving_the_page_of_a_code_forgets_no_wrong_one(store: Store) -> None:
    kiosk = Kiosk(store, helper="")
    room, opened = kiosk.desk.room, list[str]()
    digest = kiosk.desk.lock.digest
    for code in [HELPERS] * TRIES + [COACHS]:
        room.open(CodePage(room, digest=digest, whose="coach", done=opened.append))
        for digit in code:
            kiosk.press(Person.TYPE, digit)
        kiosk.press(Person.ENTER)
        if isinstance(room.page, CodePage):
            kiosk.press(Person.HOME)
    assert opened == []


def test_a_round_that_was_read_too_late_is_not_opened(store: Store) -> None:
    kiosk = Kiosk(store, helper="")
    desk, round_id = kiosk.desk, kiosk.desk.room.state.id
    kiosk.press(Person.HOME)
    desk.run_round()
    kiosk.answer()
    desk.room_press(PersonEvent(Person.CHOOSE, round_id))  # its notes are being read
    desk.lock_now()
    desk.code_press(PersonEvent(Person.HOME))
    kiosk.answer()
    assert (desk.place, desk.room.is_open) == (Place.HOME, False)


def a_question(room: Room) -> Page:
    return AskPage(room, title="?", body="", yes="Yes", no="No", done=lambda: None)


def a_code(room: Room) -> Page:
    return CodePage(room, digest="", whose="helper", done=lambda _: None)


@pytest.mark.parametrize("page", [OwnAnswersPage, a_code, a_question])
def test_no_page_of_a_round_shows_what_lies_on_the_pan(
    store: Store, page: Callable[[Room], Page]
) -> None:
    kiosk = Kiosk(store, helper="")
    kiosk.desk.room.open(page(kiosk.desk.room))
    lies = PanState(phase=PanPhase.STABLE, grams=Decimal("108.7"))
    scene = scene_of(kiosk.desk, lies, connected=True, shown=lies.grams)
    assert scene.sheet.screen not in WIDE  # the pan stands beside it
    assert (scene.pan.phase, scene.pan.number) == ("hidden", "")


def code_view_of(kiosk: Kiosk) -> CodeView:
    view = scene_of(kiosk.desk, PanState(), connected=True, shown=None).sheet
    assert isinstance(view, CodeView)
    return view


def type_code(kiosk: Kiosk, code: str) -> None:
    for digit in code:
        kiosk.press(Person.TYPE, digit)
    kiosk.press(Person.ENTER)


def test_the_helpers_code_is_another_than_the_coachs(store: Store) -> None:
    kiosk = Kiosk(store, helper="")
    kiosk.desk.room.open(CodePage(kiosk.desk.room, digest="", whose="helper", done=lambda _: None))
    assert code_view_of(kiosk).note == "Six digits. It opens cups and answers, but no key."
    type_code(kiosk, COACHS)
    view = code_view_of(kiosk)
    assert view.title == "Choose a code for the helpers."
    assert view.note == "The coach has this code. Choose another one."


def test_a_helpers_code_on_a_page_forgives_no_wrong_ones_of_the_coachs(store: Store) -> None:
    helper = digest_of(HELPERS, SALT)
    kiosk = Kiosk(store, helper=helper)
    kiosk.desk.lock.tries.wrong = TRIES - 1
    room = kiosk.desk.room
    room.open(CodePage(room, digest=helper, whose="helper", done=lambda _: None))
    type_code(kiosk, HELPERS)
    assert isinstance(room.page, HubPage)
    assert kiosk.desk.lock.tries.wrong == TRIES - 1


def test_where_a_helper_is_welcome_the_title_asks_for_either_code(store: Store) -> None:
    kiosk = Kiosk(store, helper=digest_of(HELPERS, SALT))
    kiosk.desk.lock_now()
    assert code_view_of(kiosk).title == "Type the coach's code."
    kiosk.desk.code_press(PersonEvent(Person.HOME))
    kiosk.desk.as_coach("home.round", lambda: None, helper=lambda: None)
    assert code_view_of(kiosk).title == "Type the coach's or the helpers' code."
