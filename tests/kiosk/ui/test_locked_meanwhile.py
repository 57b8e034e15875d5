"""A kiosk is cut off while another one locks the answers: what it typed comes too late and says so.

Two whole kiosks without a window on one PostgreSQL, one of them on a line that is cut and mended.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.journal import Journal
from kiosk.records.store import Store
from kiosk.rounds.contents import Stage, Typing
from kiosk.rounds.standing import results_now
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from tests.helpers.forwarder import Forwarder
from tests.helpers.result_rounds import BIRDS, played
from tests.helpers.round_hands import ROUND
from tests.helpers.round_notes import DIVISION
from tests.helpers.whole_kiosk import WholeKiosk


@pytest.fixture(autouse=True)
def hurry(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("backlog", "writer", "watcher"):
        monkeypatch.setattr(f"kiosk.records.{name}.AGAIN_S", 0.05)


@pytest.fixture
def where(on_server: str) -> str:
    """Records with a round in which everything is handed in and typed twice."""
    notes = [said.note for chain in played(BIRDS).chains.values() for said in chain]
    with closing(Store(on_server)) as store:
        store.save(*sorted(notes, key=lambda note: note.id))
    return on_server


@pytest.fixture
def line(where: str) -> Iterator[Forwarder]:
    line = Forwarder(where)
    yield line
    line.cut()


@pytest.fixture
def coach(where: str, tmp_path: Path) -> Iterator[WholeKiosk]:
    kiosk = WholeKiosk(where, tmp_path / "coach.sqlite")
    kiosk.enter(ROUND)
    yield kiosk
    kiosk.close()


@pytest.fixture
def helper(line: Forwarder, tmp_path: Path) -> Iterator[WholeKiosk]:
    kiosk = WholeKiosk(line.address, tmp_path / "helper.sqlite")
    kiosk.enter(ROUND)
    yield kiosk
    kiosk.close()


def kept(where: str, round_id: str) -> RoundState:
    with closing(Store(where)) as store:
        return RoundState.of(store.round_notes(round_id))


def test_an_answer_typed_while_cut_off_comes_after_the_lock_and_is_told(
    where: str, line: Forwarder, coach: WholeKiosk, helper: WholeKiosk
) -> None:
    before = results_now(coach.round, DIVISION, draws=0)
    helper.tap("Answers")
    line.cut()
    helper.tap("Wren")
    helper.words("KL")
    for digit in "999":
        helper.press(Person.TYPE, digit)
    helper.press(Person.ENTER)
    assert helper.not_stored == 1
    (mine,) = [
        said
        for task in Task
        for said in helper.round.history(f"answer wren {task} {Typing.SECOND}")[1:]
    ]

    coach.tap("Results")
    coach.press(Person.GO_ON)
    coach.press(Person.YES)
    assert coach.round.stage(DIVISION) is Stage.LOCKED

    line.mend()
    helper.until(lambda: not helper.not_stored and bool(helper.desk.failure), "the refusal")
    helper.read_refusals()
    (told,) = helper.told
    assert str(RecordsError(Problem.ROUND_LOCKED)) in told
    assert "Wren" in told
    assert "999" not in told  # anybody may read it

    helper.until(lambda: helper.round.stage(DIVISION) is Stage.LOCKED, "the lock")
    found = kept(where, helper.round.id)
    for state in (found, helper.round, coach.round):
        assert mine.note.id not in [said.note.id for said in state.history(mine.note.about)]
        after = results_now(state, DIVISION, draws=0)
        assert (after.rows, after.stage) == (before.rows, Stage.LOCKED)
    with closing(Journal(helper.journal)) as journal:
        assert [why for _, why in journal.refused()] == [told]
