from __future__ import annotations

import os
import threading
from collections.abc import Callable, Iterator
from queue import Queue

import pytest

from kiosk.records.errors import Problem, RecordsError
from kiosk.records.store import Store
from kiosk.records.writer import Writer, opening
from tests.helpers.recorded import cup_taken, handed_in

PATIENCE_S = 10.0


class Screen:
    """The other end: takes the calls that the writer hands over and notes what they said."""

    def __init__(self) -> None:
        self.calls: Queue[Callable[[], None]] = Queue()
        self.heard: list[object] = []

    def done(self, answer: object = "done") -> None:
        self.heard.append(answer)

    def failed(self, error: RecordsError) -> None:
        self.heard.append(error.problem)

    def hear(self, count: int = 1) -> list[object]:
        """What the next answers said."""
        for _ in range(count):
            self.calls.get(timeout=PATIENCE_S)()
        heard, self.heard = self.heard, []
        return heard


@pytest.fixture
def screen() -> Screen:
    return Screen()


@pytest.fixture
def writer(where: str, screen: Screen) -> Iterator[Writer]:
    writer = Writer(opening(where), screen.calls.put)
    yield writer
    writer.close(PATIENCE_S)


def out(store: Store) -> list[int]:
    return [cup.number for cup in store.cups_out(simulated=False)]


# Answers -----------------------------------------------------------------------------------------


def test_done_means_that_it_is_on_the_disk(writer: Writer, screen: Screen, where: str) -> None:
    writer.save(cup_taken(7), done=screen.done, failed=screen.failed)
    assert screen.hear() == ["done"]
    assert out(Store(where)) == [7]


def test_nothing_is_called_in_the_writers_thread(writer: Writer, screen: Screen) -> None:
    writer.save(cup_taken(), done=screen.done, failed=screen.failed)
    call = screen.calls.get(timeout=PATIENCE_S)
    assert screen.heard == []
    call()
    assert screen.heard == ["done"]


def test_the_store_is_opened_and_asked_in_one_other_thread(where: str, screen: Screen) -> None:
    threads = []

    def open_store() -> Store:
        threads.append(threading.current_thread())
        return Store(where)

    writer = Writer(open_store, screen.calls.put)
    for _ in range(2):
        writer.ask(
            lambda _: threads.append(threading.current_thread()),
            done=screen.done,
            failed=screen.failed,
        )
    assert writer.close(PATIENCE_S)
    assert len(threads) == 3
    assert len(set(threads)) == 1
    assert threads[0] is not threading.current_thread()


def test_an_answer_is_handed_over(writer: Writer, screen: Screen) -> None:
    writer.save(cup_taken(7), cup_taken(8), done=screen.done, failed=screen.failed)
    writer.ask(out, done=screen.done, failed=screen.failed)
    assert screen.hear(2) == ["done", [7, 8]]


def test_requests_are_done_in_the_order_in_which_they_came(writer: Writer, screen: Screen) -> None:
    for number in range(1, 21):
        writer.save(cup_taken(number), done=screen.done, failed=screen.failed)
        writer.ask(lambda store: len(out(store)), done=screen.done, failed=screen.failed)
    assert screen.hear(40)[1::2] == list(range(1, 21))


# Failures ----------------------------------------------------------------------------------------


def test_a_refused_save_is_told_and_the_next_one_goes_on(writer: Writer, screen: Screen) -> None:
    for cup in (cup_taken(7), cup_taken(7), cup_taken(8)):
        writer.save(cup, done=screen.done, failed=screen.failed)
    assert screen.hear(3) == ["done", Problem.NUMBER_TAKEN, "done"]


def test_a_failed_save_can_be_repeated_with_the_same_entries(
    writer: Writer, screen: Screen, where: str
) -> None:
    cup = cup_taken(7)
    back = handed_in(cup)
    writer.save(cup, done=screen.done, failed=screen.failed)
    screen.hear()
    os.rename(where, where + ".away")
    writer.save(back, done=screen.done, failed=screen.failed)
    assert screen.hear() == [Problem.NOT_WRITABLE]
    os.rename(where + ".away", where)
    for _ in range(2):
        writer.save(back, done=screen.done, failed=screen.failed)
    assert screen.hear(2) == ["done", "done"]
    assert len(Store(where).last_tries("Heron", simulated=False)) == 1


def test_a_store_that_does_not_open_answers_every_request_and_is_tried_again(
    tmp_path: object, screen: Screen
) -> None:
    where = os.path.join(str(tmp_path), "stick", "records.sqlite")
    writer = Writer(opening(where), screen.calls.put)
    for _ in range(2):
        writer.save(cup_taken(7), done=screen.done, failed=screen.failed)
    assert screen.hear(2) == [Problem.NO_FOLDER, Problem.NO_FOLDER]
    os.mkdir(os.path.dirname(where))
    writer.save(cup_taken(7), done=screen.done, failed=screen.failed)
    assert screen.hear() == ["done"]
    assert writer.close(PATIENCE_S)


def test_a_fault_of_our_own_is_told_and_the_thread_lives_on(
    writer: Writer, screen: Screen, caplog: pytest.LogCaptureFixture
) -> None:
    def faulty(store: Store) -> None:
        raise ZeroDivisionError("division by zero")

    told: list[str] = []
    writer.ask(faulty, done=screen.done, failed=lambda error: told.append(str(error)))
    writer.ask(out, done=screen.done, failed=screen.failed)
    assert screen.hear(2) == [[]]
    assert "division by zero" in told[0]
    assert "ZeroDivisionError" in caplog.text


def test_an_answer_that_finds_nobody_does_not_end_the_thread(
    where: str, caplog: pytest.LogCaptureFixture
) -> None:
    def nobody(call: Callable[[], None]) -> None:
        raise ConnectionError("the screen is gone")

    writer = Writer(opening(where), nobody)
    for number in (7, 8):
        writer.save(cup_taken(number), done=lambda: None, failed=lambda _: None)
    writer.close(PATIENCE_S)
    assert out(Store(where)) == [7, 8]
    assert "the screen is gone" in caplog.text


# Closing -----------------------------------------------------------------------------------------


def test_closing_finishes_what_was_asked(writer: Writer, screen: Screen, where: str) -> None:
    for number in range(1, 21):
        writer.save(cup_taken(number), done=screen.done, failed=screen.failed)
    assert writer.close(PATIENCE_S)
    assert out(Store(where)) == list(range(1, 21))


def test_closing_twice_says_the_same(writer: Writer) -> None:
    assert writer.close(PATIENCE_S)
    assert writer.close(PATIENCE_S)


def test_closing_gives_up_at_its_deadline_but_the_rest_is_still_done(
    writer: Writer, screen: Screen, where: str
) -> None:
    slow_disk = threading.Event()
    writer.ask(lambda _: slow_disk.wait(PATIENCE_S), done=screen.done, failed=screen.failed)
    writer.save(cup_taken(7), done=screen.done, failed=screen.failed)
    assert not writer.close(0.01)
    slow_disk.set()
    assert writer.close(PATIENCE_S)
    assert out(Store(where)) == [7]


def test_closing_says_so_when_something_was_not_kept(writer: Writer, screen: Screen) -> None:
    slow_disk = threading.Event()
    writer.save(cup_taken(7), done=screen.done, failed=screen.failed)
    writer.ask(lambda _: slow_disk.wait(PATIENCE_S), done=screen.done, failed=screen.failed)
    writer.save(cup_taken(7), done=screen.done, failed=screen.failed)
    assert not writer.close(0.01)
    slow_disk.set()
    assert not writer.close(PATIENCE_S)


def test_a_failure_that_was_told_before_does_not_spoil_the_closing(
    writer: Writer, screen: Screen
) -> None:
    for _ in range(2):
        writer.save(cup_taken(7), done=screen.done, failed=screen.failed)
    assert screen.hear(2) == ["done", Problem.NUMBER_TAKEN]
    assert writer.close(PATIENCE_S)


def test_after_closing_every_request_is_refused(writer: Writer, screen: Screen) -> None:
    writer.close(PATIENCE_S)
    writer.save(cup_taken(), done=screen.done, failed=screen.failed)
    assert screen.hear() == [Problem.CLOSED]


def test_a_writer_that_was_never_asked_opens_nothing(where: str, screen: Screen) -> None:
    assert Writer(opening(where), screen.calls.put).close(PATIENCE_S)
    assert not os.path.exists(where)
