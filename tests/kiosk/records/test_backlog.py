"""While the server is away: what is kept here, what must wait, and how it is caught up."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from kiosk.records.backlog import AGAIN_S, Backlog, News
from kiosk.records.entries import AnswerShown, CupTaken, Entry, TryThrownAway
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.journal import Journal
from kiosk.records.round_notes import FIRST, NoteKind, RoundNote
from kiosk.records.store import Store
from tests.helpers.recorded import AT, cup_taken, handed_in, key_made, key_mass, key_started


class Server:
    """A store that can be out of reach, or refuse to say what is wrong."""

    def __init__(self, store: Store) -> None:
        self.store = store
        self.trouble: Problem | None = None
        self.asked = 0

    def reach(self) -> Store:
        self.asked += 1
        if self.trouble is not None:
            raise RecordsError(self.trouble, where="the server", detail="a fault")
        return self.store


class Clock:
    def __init__(self) -> None:
        self.now = 0.0

    def __call__(self) -> float:
        return self.now


@pytest.fixture
def server(store: Store) -> Server:
    return Server(store)


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "journal.sqlite"


@pytest.fixture
def backlog(path: Path, server: Server, clock: Clock) -> Iterator[Backlog]:
    with closing(Backlog(Journal(path), server.reach, clock)) as backlog:
        yield backlog


@pytest.fixture
def cup(server: Server) -> CupTaken:
    """A cup that is out, and on the server."""
    cup = cup_taken(7)
    server.store.save(cup)
    return cup


def why(backlog: Backlog, *entries: Entry) -> Problem:
    with pytest.raises(RecordsError) as caught:
        backlog.save(entries)
    return caught.value.problem


def tries(server: Server) -> int:
    return len(server.store.last_tries("Heron", simulated=False))


# Going on ------------------------------------------------------------------------------------


def test_with_a_server_that_answers_nothing_goes_to_the_journal(
    backlog: Backlog, server: Server
) -> None:
    backlog.save([cup_taken(7)])
    assert len(server.store.cups_out(simulated=False)) == 1
    assert backlog.news() == News(waiting=0)


@pytest.mark.parametrize("trouble", [Problem.AWAY, Problem.FULL])
def test_a_cup_comes_back_while_the_server_is_away_and_is_stored_later(
    backlog: Backlog, server: Server, cup: CupTaken, clock: Clock, trouble: Problem
) -> None:
    server.trouble = trouble
    backlog.save([handed_in(cup)])
    assert (backlog.news(), tries(server)) == (News(waiting=1), 0)
    server.trouble = None
    backlog.catch_up()
    assert (backlog.news(), tries(server)) == (News(waiting=0), 1)


def test_what_waits_survives_a_restart(
    backlog: Backlog, server: Server, cup: CupTaken, path: Path
) -> None:
    server.trouble = Problem.AWAY
    backlog.save([handed_in(cup)])
    server.trouble = None
    with closing(Backlog(Journal(path), server.reach)) as restarted:
        assert restarted.waiting == 1
        assert restarted.ask().cups_out(simulated=False) == []
    assert tries(server) == 1


def test_it_is_stored_in_order_and_later_saves_come_after_it(
    backlog: Backlog, server: Server, clock: Clock
) -> None:
    key = key_started()
    server.trouble = Problem.AWAY
    backlog.save([key])
    backlog.save([key_mass(key, "sample", "35.4")])
    server.trouble = None
    backlog.save([key_mass(key, "sample", "35.5")])  # too soon to try again
    assert backlog.waiting == 3
    clock.now = AGAIN_S
    backlog.save([key_mass(key, "sample", "35.6")])
    found = server.store.open_key(simulated=False)
    assert found is not None
    assert [str(mass.weighing.grams) for mass in found.masses] == ["35.4", "35.5", "35.6"]
    assert backlog.waiting == 0


def test_a_server_that_is_away_is_not_asked_for_each_cup(
    backlog: Backlog, server: Server, clock: Clock
) -> None:
    server.trouble = Problem.AWAY
    key = key_started()
    backlog.save([key])
    asked = server.asked
    for _ in range(5):
        backlog.save([key_mass(key, "sample", "35.4")])
    assert server.asked == asked


def test_stored_twice_is_stored_once(
    backlog: Backlog, server: Server, cup: CupTaken, path: Path
) -> None:
    """The answer got lost: the save is on the server, and in the journal."""
    back = handed_in(cup)
    server.trouble = Problem.AWAY
    backlog.save([back])
    backlog.save([back])
    assert backlog.waiting == 1
    server.trouble = None
    server.store.save(back)
    backlog.catch_up()
    assert (backlog.waiting, tries(server), backlog.news().refused) == (0, 1, ())


# Waiting -------------------------------------------------------------------------------------


def note(kind: NoteKind, content: str = "{}") -> RoundNote:
    return RoundNote(
        round_id="r" * 32, simulated=False, kind=kind, about="team 1", after=FIRST,
        content=content, at=AT,
    )  # fmt: skip


@pytest.mark.parametrize(
    "entry",
    [
        cup_taken(7),
        key_made(key_started()),
        AnswerShown(key_id="k", at=AT),
        note(NoteKind.STEP),
        note(NoteKind.KEY),
        note(NoteKind.CLOCK, '{"turn": "start"}'),
    ],
    ids=lambda entry: type(entry).__name__,
)
def test_what_only_the_server_can_grant_waits_for_it_and_is_safe_meanwhile(
    backlog: Backlog, server: Server, path: Path, entry: Entry
) -> None:
    server.trouble = Problem.AWAY
    assert why(backlog, entry) is Problem.AWAY
    assert why(backlog, entry) is Problem.AWAY
    assert backlog.news() == News(waiting=1)
    with closing(Journal(path)) as journal:
        assert journal.count() == 1


@pytest.mark.parametrize(
    "captured",
    [
        note(NoteKind.CUP),
        note(NoteKind.ANSWER),
        *(note(NoteKind.CLOCK, json.dumps({"turn": turn})) for turn in ("pause", "go on", "stop")),
    ],
    ids=lambda note: f"{note.kind} {note.content}",
)
def test_cups_answers_and_running_clocks_of_a_round_do_not_wait(
    backlog: Backlog, server: Server, captured: RoundNote
) -> None:
    server.trouble = Problem.AWAY
    backlog.save([captured])
    assert backlog.waiting == 1


def test_asking_again_is_answered_once_the_server_is_there(
    backlog: Backlog, server: Server, clock: Clock
) -> None:
    cup = cup_taken(7)
    server.trouble = Problem.AWAY
    assert why(backlog, cup) is Problem.AWAY
    server.trouble, clock.now = None, AGAIN_S
    backlog.save([cup])
    assert [out.id for out in server.store.cups_out(simulated=False)] == [cup.id]
    assert backlog.waiting == 0


def test_a_question_waits_while_its_answer_would_lack_something(
    backlog: Backlog, server: Server, cup: CupTaken, clock: Clock
) -> None:
    server.trouble = Problem.AWAY
    backlog.save([handed_in(cup)])
    server.trouble = None
    with pytest.raises(RecordsError):
        backlog.ask()
    clock.now = AGAIN_S
    assert backlog.ask().cups_out(simulated=False) == []


# Refused -------------------------------------------------------------------------------------


def test_what_is_refused_at_once_is_told_at_once(backlog: Backlog, cup: CupTaken) -> None:
    assert why(backlog, cup_taken(7)) is Problem.NUMBER_TAKEN
    assert backlog.news() == News(waiting=0)


def test_what_is_refused_later_is_told_once_and_stays_in_the_journal(
    backlog: Backlog, server: Server, cup: CupTaken, path: Path
) -> None:
    server.trouble = Problem.AWAY
    backlog.save([handed_in(cup, "105.7")])
    server.trouble = None
    server.store.save(TryThrownAway(try_id=cup.id, reason="at another kiosk", at=AT))
    backlog.catch_up()
    (told,) = backlog.news().refused
    assert "(105.7 g)" in told
    assert "This cup is not out any more" in told
    assert backlog.news() == News(waiting=0)
    with closing(Journal(path)) as journal:
        ((entries, reason),) = journal.refused()
    assert cup.id in entries
    assert "not out any more" in reason


@pytest.mark.parametrize(("there", "told"), [("412", 0), ("421", 1)])
def test_an_answer_that_somebody_else_typed_alike_is_nothing_to_tell(
    backlog: Backlog, server: Server, path: Path, there: str, told: int
) -> None:
    first = note(NoteKind.ROUND)
    opened = replace(first, id=first.round_id, about="round")
    mine, other = (
        note(NoteKind.ANSWER, json.dumps({"team": "1", "typing": "first", "estimate": said}))
        for said in ("412", there)
    )
    server.store.save(opened)
    server.trouble = Problem.AWAY
    backlog.save([mine])
    server.trouble = None
    server.store.save(other)
    backlog.catch_up()
    assert (backlog.waiting, len(backlog.news().refused)) == (0, told)
    with closing(Journal(path)) as journal:
        assert len(journal.refused()) == 1


def test_what_comes_after_a_refusal_is_stored(
    backlog: Backlog, server: Server, cup: CupTaken
) -> None:
    other = cup_taken(8)
    server.store.save(other)
    server.trouble = Problem.AWAY
    backlog.save([handed_in(cup)])
    backlog.save([handed_in(other)])
    server.trouble = None
    server.store.save(handed_in(cup))
    backlog.catch_up()
    assert (backlog.waiting, len(backlog.news().refused), tries(server)) == (0, 1, 2)


def test_who_waits_for_an_answer_gets_the_refusal_and_nobody_else(
    backlog: Backlog, server: Server, clock: Clock
) -> None:
    mine = cup_taken(7)
    server.trouble = Problem.AWAY
    assert why(backlog, mine) is Problem.AWAY
    server.trouble = None
    server.store.save(cup_taken(7))
    backlog.catch_up()
    assert backlog.news() == News(waiting=0)
    assert why(backlog, mine) is Problem.NUMBER_TAKEN


def test_an_unknown_fault_keeps_everything_waiting(
    backlog: Backlog, server: Server, cup: CupTaken, clock: Clock
) -> None:
    server.trouble = Problem.AWAY
    backlog.save([handed_in(cup)])
    server.trouble = Problem.UNEXPECTED
    backlog.catch_up()
    assert backlog.waiting == 1
    server.trouble, clock.now = None, AGAIN_S
    backlog.ask()
    assert tries(server) == 1


def test_a_row_that_another_version_wrote_is_told_and_kept(
    backlog: Backlog, server: Server, path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    with closing(sqlite3.connect(path)) as file, file:
        file.execute("""INSERT INTO saves (entries) VALUES ('[{"is a": "Spell"}]')""")
    backlog.catch_up()
    assert len(backlog.news().refused) == 1
    with closing(Journal(path)) as journal:
        assert "Spell" in journal.refused()[0][0]
