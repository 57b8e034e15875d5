"""What other kiosks write is followed, and what is not stored yet is told, at a table at work."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from kiosk.evidence import Source
from kiosk.procedures.hand_in import HandInState
from kiosk.procedures.procedure import Person
from kiosk.procedures.weigh_empty import WeighEmptyState
from kiosk.records.backlog import News
from kiosk.records.entries import CupTaken, new_id
from kiosk.records.errors import Problem
from kiosk.records.store import Store
from kiosk.ui.desk import Desk
from kiosk.ui.desk_base import Place
from kiosk.ui.presenters.scene import scene_of
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import MessageView
from kiosk.weighing.pan_watch import PanState
from tests.helpers.held_writer import HeldWriter
from tests.helpers.pan import EMPTY, PLACED, settled, surroundings
from tests.helpers.recorded import cup_taken, handed_in, key_made, key_mass, key_started

SIMULATED = Source.SIMULATED


class Kiosk:
    """A desk whose records answer when a test says so."""

    def __init__(self, store: Store) -> None:
        self.writer = HeldWriter(store)
        self.desk = Desk(
            facts=TableFacts(simulated=True),
            world=replace(surroundings(), new_id=new_id),
            writer=self.writer,  # type: ignore[arg-type]  # as much of one as a desk needs
            weigh_again=lambda: None,
            changed=lambda: None,
        )
        self.desk.open()
        self.writer.answer()

    @property
    def cups(self) -> list[int]:
        return [cup.number for cup in self.desk.facts.cups]

    @property
    def state(self) -> object:
        return self.desk.procedure and self.desk.procedure.state

    def weigh_empty(self) -> None:
        """Heron's empty cup is put on, and about to be weighed."""
        self.desk.team_chosen("Heron")
        self.writer.answer()
        self.desk.pan_event(PLACED)

    def capture(self) -> None:
        """It is weighed, and asked to be kept."""
        self.desk.pan_event(settled("12.3"))

    def told(self) -> None:
        """The watcher tells that somebody wrote something."""
        self.desk.others_wrote()


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    with closing(Store(str(tmp_path / "records.sqlite"))) as store:
        yield store


@pytest.fixture
def kiosk(store: Store) -> Kiosk:
    return Kiosk(store)


@pytest.fixture
def theirs(store: Store) -> CupTaken:
    """A cup taken at another kiosk."""
    cup = cup_taken(41, team="Wren", source=SIMULATED)
    store.save(cup)
    return cup


# Following -----------------------------------------------------------------------------------


def test_a_cup_taken_at_another_kiosk_can_be_handed_in_here(kiosk: Kiosk, theirs: CupTaken) -> None:
    assert kiosk.cups == []
    kiosk.told()
    kiosk.writer.answer()
    kiosk.desk.hand_in(41)
    kiosk.writer.answer()
    assert kiosk.state is HandInState.PUT_ON


def test_a_jar_that_got_its_key_at_another_kiosk_has_its_letter(kiosk: Kiosk, store: Store) -> None:
    key = key_started()
    store.save(key, key_mass(key, "sample", "35.4", source=SIMULATED), key_made(key, "C"))
    kiosk.told()
    kiosk.writer.answer()
    assert (kiosk.desk.facts.used_letters, kiosk.desk.facts.keys_kept) == (("C",), 1)


def test_nobody_waits_for_it_and_the_work_goes_on(kiosk: Kiosk, theirs: CupTaken) -> None:
    kiosk.weigh_empty()
    kiosk.told()
    assert kiosk.desk.settled_for_showing
    kiosk.writer.answer()
    assert (kiosk.state, kiosk.cups) == (WeighEmptyState.SETTLING, [41])


def test_news_that_comes_quicker_than_answers_is_looked_at_once(kiosk: Kiosk, store: Store) -> None:
    kiosk.told()
    asked = kiosk.writer.asked
    for _ in range(9):
        kiosk.told()
    assert kiosk.writer.asked == asked
    for _ in range(asked - 1):
        kiosk.writer.answer_one()
    store.save(cup_taken(41, team="Wren", source=SIMULATED))  # after the cups were looked at
    kiosk.writer.answer_one()
    assert kiosk.writer.asked == asked
    kiosk.writer.answer()
    assert kiosk.cups == [41]


def test_what_was_missed_while_the_records_were_away_is_looked_at(
    kiosk: Kiosk, theirs: CupTaken
) -> None:
    kiosk.told()
    kiosk.told()
    kiosk.writer.fail(Problem.AWAY)
    kiosk.writer.answer()
    assert kiosk.cups == [41]


def test_an_own_cup_is_not_forgotten_for_an_answer_from_before(
    kiosk: Kiosk, theirs: CupTaken
) -> None:
    kiosk.weigh_empty()
    kiosk.told()
    kiosk.capture()  # kept after the question, but known at once
    assert len(kiosk.cups) == 1
    kiosk.writer.answer_one()
    assert len(kiosk.cups) == 1
    kiosk.writer.answer()
    assert sorted(kiosk.cups) == [41, 42]


def test_a_cup_that_another_kiosk_was_quicker_with_is_told(
    kiosk: Kiosk, store: Store, theirs: CupTaken
) -> None:
    kiosk.told()
    kiosk.writer.answer()
    kiosk.desk.hand_in(41)
    store.save(handed_in(theirs, source=SIMULATED))
    kiosk.told()
    kiosk.writer.answer()
    assert (kiosk.cups, kiosk.state) == ([], HandInState.PUT_ON)
    for event in (PLACED, settled("105.7")):
        kiosk.desk.pan_event(event)
    kiosk.writer.answer()
    assert kiosk.desk.failure is not None
    assert "not out any more" in kiosk.desk.failure
    kiosk.desk.go_home()
    kiosk.writer.answer()
    assert (kiosk.desk.failure, kiosk.desk.procedure, kiosk.cups) == (None, None, [])


def test_a_code_chosen_at_another_kiosk_opens_the_drawers_here(kiosk: Kiosk, store: Store) -> None:
    store.remember("coach_code", "a digest")
    kiosk.told()
    kiosk.writer.answer()
    assert kiosk.desk.lock.digest == "a digest"


def test_what_is_not_kept_yet_is_not_forgotten_either(kiosk: Kiosk, theirs: CupTaken) -> None:
    kiosk.weigh_empty()
    kiosk.capture()
    kiosk.told()
    kiosk.writer.fail(Problem.FULL)
    assert len(kiosk.cups) == 1


# Away and back -------------------------------------------------------------------------------


def words(kiosk: Kiosk) -> tuple[str, ...]:
    return scene_of(kiosk.desk, PanState(), connected=True, shown=None).strip.words


def test_the_strip_says_how_much_is_not_stored(kiosk: Kiosk) -> None:
    kiosk.desk.journal_said(News(waiting=2))
    assert "2 not yet stored" in words(kiosk)
    kiosk.desk.journal_said(News(waiting=0))
    assert "0 not yet stored" not in words(kiosk)


def test_what_waits_in_the_journal_is_not_forgotten_for_an_answer_that_lacks_it(
    kiosk: Kiosk, theirs: CupTaken
) -> None:
    kiosk.desk.journal_said(News(waiting=1))
    kiosk.told()
    kiosk.writer.answer()
    assert kiosk.cups == []
    kiosk.desk.journal_said(News(waiting=0))
    kiosk.writer.answer()
    assert kiosk.cups == [41]


@pytest.mark.parametrize("back", [lambda desk: desk.others_wrote(),
                                  lambda desk: desk.journal_said(News(waiting=0))])  # fmt: skip
def test_a_cup_that_had_to_wait_goes_on_by_itself(kiosk: Kiosk, back: object) -> None:
    kiosk.weigh_empty()
    kiosk.capture()
    kiosk.writer.fail(Problem.AWAY)
    assert kiosk.desk.failure is not None
    back(kiosk.desk)  # type: ignore[operator]  # one of the two above
    kiosk.writer.answer()
    assert (kiosk.desk.failure, kiosk.state) == (None, WeighEmptyState.WEIGHED)


def test_a_full_disk_of_this_kiosk_is_told_and_waits_for_a_person(kiosk: Kiosk) -> None:
    kiosk.weigh_empty()
    kiosk.capture()
    kiosk.writer.fail(Problem.NOT_WRITABLE)
    kiosk.told()
    kiosk.writer.answer()
    assert kiosk.desk.failure is not None


# Refused later -------------------------------------------------------------------------------


REFUSED = News(waiting=0, refused=("105.7 g could not be stored.",))


def test_a_late_refusal_is_shown_until_somebody_saw_it(kiosk: Kiosk) -> None:
    kiosk.desk.journal_said(REFUSED)
    sheet = scene_of(kiosk.desk, PanState(), connected=True, shown=None).sheet
    assert isinstance(sheet, MessageView)
    assert sheet.lines[0] == REFUSED.refused[0]
    assert sheet.main is not None
    assert sheet.main.says is not None
    assert sheet.main.says.kind is Person.HOME
    kiosk.writer.answer()
    kiosk.desk.go_home()
    kiosk.writer.answer()
    assert (kiosk.desk.failure, kiosk.desk.place) == (None, Place.HOME)


def test_it_does_not_fall_into_somebodys_work(kiosk: Kiosk) -> None:
    kiosk.weigh_empty()
    kiosk.desk.journal_said(REFUSED)
    assert kiosk.desk.failure is None
    kiosk.capture()
    kiosk.writer.answer()
    kiosk.desk.pan_event(EMPTY)
    assert kiosk.state is WeighEmptyState.FILL


def test_each_refusal_is_shown(kiosk: Kiosk) -> None:
    kiosk.desk.journal_said(News(waiting=0, refused=("one", "two")))
    kiosk.writer.answer()
    assert kiosk.desk.failure == "one"
    kiosk.desk.go_home()
    assert kiosk.desk.failure == "two"
