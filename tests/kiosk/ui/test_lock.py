"""The lock of the coach's drawers."""

from __future__ import annotations

import pytest

from kiosk.ui.lock import DIGITS, TRIES, WAIT_S, Asking, Lock, digest_of, fits

CODE, OTHER = "271828", "314159"


def typed(lock: Lock, code: str, now: float = 0.0) -> bool:
    for digit in code:
        lock.type(digit, now)
    return lock.enter(now)


def locked() -> Lock:
    lock = Lock(closes_after=60.0, digest=digest_of(CODE))
    lock.ask()
    return lock


def test_the_code_opens() -> None:
    lock = locked()
    assert typed(lock, CODE)
    assert lock.open


def test_another_code_does_not() -> None:
    lock = locked()
    assert not typed(lock, OTHER)
    assert (lock.open, lock.wrong, lock.typed) == (False, True, "")


@pytest.mark.parametrize("code", ["", "27182", "2718281"])
def test_only_six_digits_are_a_code(code: str) -> None:
    lock = locked()
    opened = typed(lock, code)
    assert opened is (code[:DIGITS] == CODE)


@pytest.mark.parametrize("digit", ["a", "٣", "", "12"])
def test_what_is_no_digit_is_not_taken(digit: str) -> None:
    lock = locked()
    lock.type(digit, 0.0)
    assert lock.typed == ""


def test_a_digit_is_rubbed_out() -> None:
    lock = locked()
    lock.type("1", 0.0)
    lock.rub_out()
    assert typed(lock, CODE)


def test_after_five_wrong_codes_nothing_is_taken_for_a_while() -> None:
    lock = locked()
    for _ in range(TRIES):
        typed(lock, OTHER, 10.0)
    assert lock.waits(10.0) == WAIT_S
    assert not typed(lock, CODE, 10.0 + WAIT_S - 1)
    assert lock.waits(10.0 + WAIT_S) == 0
    assert typed(lock, CODE, 10.0 + WAIT_S)


def test_a_new_code_is_typed_twice() -> None:
    lock = Lock(closes_after=60.0)
    lock.ask()
    assert lock.asking is Asking.NEW
    assert not typed(lock, CODE)
    assert lock.asking is Asking.AGAIN
    assert typed(lock, CODE)
    assert fits(CODE, lock.digest)


def test_two_new_codes_that_differ_are_none() -> None:
    lock = Lock(closes_after=60.0)
    lock.ask()
    typed(lock, CODE)
    assert not typed(lock, OTHER)
    assert (lock.asking, lock.wrong, lock.digest) == (Asking.NEW, True, "")


def test_it_closes_by_itself_a_minute_after_the_last_sign() -> None:
    lock = locked()
    typed(lock, CODE, 0.0)
    lock.seen(30.0)
    assert not lock.tick(89.0)
    assert lock.tick(90.0)
    assert not lock.open
    assert not lock.tick(200.0)


def test_without_a_code_it_stays_open() -> None:
    lock = Lock(closes_after=60.0)
    lock.open_now(0.0)
    assert not lock.tick(1000.0)


def test_what_is_kept_does_not_tell_the_code() -> None:
    assert CODE not in digest_of(CODE)
    assert digest_of(CODE) != digest_of(CODE)


@pytest.mark.parametrize("digest", ["", "zz$00", "00", CODE])
def test_what_is_no_digest_fits_nothing(digest: str) -> None:
    assert not fits(CODE, digest)


def helped(*, welcome: bool) -> Lock:
    lock = Lock(closes_after=60.0, digest=digest_of(CODE), helper_digest=digest_of(OTHER))
    lock.ask(helper_welcome=welcome)
    return lock


def test_a_helpers_code_forgives_no_wrong_ones() -> None:
    lock = helped(welcome=True)
    for _ in range(TRIES - 1):
        typed(lock, "000000")
    assert typed(lock, OTHER)
    typed(lock, "000000")
    assert lock.waits(0.0) == WAIT_S


def test_locked_after_the_coach_came_a_helpers_code_is_wrong() -> None:
    lock = helped(welcome=True)
    typed(lock, CODE)
    lock.close()
    assert not typed(lock, OTHER)
    assert (lock.wrong, lock.open) == (True, False)


def test_the_coachs_new_code_may_not_be_the_helpers() -> None:
    lock = Lock(closes_after=60.0, helper_digest=digest_of(OTHER))
    lock.ask()
    typed(lock, OTHER)
    assert (lock.taken, lock.asking) == (True, Asking.NEW)
    typed(lock, CODE)
    assert lock.asking is Asking.AGAIN


def test_once_chosen_and_locked_the_code_is_asked_for() -> None:
    lock = Lock(closes_after=60.0)
    lock.ask()
    typed(lock, CODE)
    typed(lock, CODE)
    lock.close()
    assert lock.asking is Asking.CODE


def test_where_both_have_one_code_it_is_the_coachs() -> None:
    lock = Lock(closes_after=60.0, digest=digest_of(CODE), helper_digest=digest_of(CODE))
    lock.ask(helper_welcome=True)
    assert typed(lock, CODE)
    assert (lock.open, lock.helper_came) == (True, False)
