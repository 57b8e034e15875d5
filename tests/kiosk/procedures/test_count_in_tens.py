"""A sample counted in tens: a nine or an eleven is pointed out while it is on top."""

from __future__ import annotations

from decimal import Decimal

from kiosk.procedures.count_samples import SamplesState
from kiosk.procedures.procedure import Person
from tests.helpers.pan import DISTURBED, EMPTY, PLACED, feed, press, settled
from tests.helpers.sampled import LENTILS, PASTA, UNKNOWN, in_tens, lay, started

S = SamplesState
TEN_TENS = ("5.0", "5.1", "4.9", "5.0", "5.0", "5.1", "5.0", "5.0", "4.9", "5.0")


def test_it_is_offered_where_the_balance_sees_a_piece() -> None:
    assert started(PASTA).offers(Person.TENS)
    assert not started(LENTILS).offers(Person.TENS)
    assert not started(UNKNOWN).offers(Person.TENS)


def test_pieces_that_nobody_knows_show_with_the_first_sample() -> None:
    procedure = started(("beads", "beads and hardware", Decimal(5)))
    assert not procedure.offers(Person.TENS)
    feed(procedure, *lay("90.0"), press(Person.KEEP))  # type: ignore[arg-type]
    assert procedure.offers(Person.TENS)


def test_ten_tens_are_one_sample_with_their_first_and_last_reading() -> None:
    procedure = in_tens(*TEN_TENS)
    assert procedure.state is S.READY
    feed(procedure, press(Person.KEEP))
    assert procedure.kept.sample_nets == (Decimal("50.0"),)
    assert procedure.kept.samples[0].tare is None


def test_tens_can_be_added_to_kept_pieces() -> None:
    procedure = in_tens(*TEN_TENS)
    feed(procedure, press(Person.KEEP), press(Person.TENS))
    for ten in range(1, 11):
        feed(procedure, PLACED, settled(str(Decimal("71.4") + 5 * ten)))
    feed(procedure, press(Person.KEEP))
    assert procedure.kept.sample_nets == (Decimal("50.0"), Decimal("50.0"))
    assert procedure.kept.chains == 1


def test_an_eleven_is_pointed_out_and_put_right() -> None:
    procedure = in_tens("5.0", "5.0", "5.0", "5.5")
    assert (procedure.state, procedure.odd) == (S.ODD_TEN, (4, 1))
    feed(procedure, DISTURBED, settled("41.4"))
    assert (procedure.state, procedure.tens_done) == (S.TENS, 4)


def test_a_ten_that_is_heavy_can_be_one() -> None:
    procedure = in_tens("5.0", "5.0", "5.0", "5.5")
    feed(procedure, press(Person.YES))
    assert (procedure.state, procedure.tens_done) == (S.TENS, 4)
    feed(procedure, PLACED, settled("46.9"))
    assert (procedure.state, procedure.tens_done) == (S.TENS, 5)  # and is not asked about again


def test_a_first_eleven_shows_once_there_are_more_tens() -> None:
    procedure = in_tens("5.5", "5.0", "5.0")
    while procedure.tens_done < 4:
        feed(procedure, PLACED, settled(str(procedure.tens[-1] + 5)))
    assert (procedure.state, procedure.odd) == (S.ODD_TEN, (1, 1))


def test_half_a_ten_is_waited_for() -> None:
    procedure = in_tens("5.0", "5.0", "2.0", "3.0")
    assert (procedure.state, procedure.tens_done) == (S.TENS, 3)


def test_a_ten_that_is_taken_off_again_is_not_counted() -> None:
    procedure = in_tens("5.0", "5.0", "-5.0")
    assert (procedure.state, procedure.tens_done) == (S.TENS, 1)


def test_when_others_are_taken_off_the_tray_is_emptied() -> None:
    assert in_tens("5.0", "5.0", "-3.0").state is S.EMPTY_TRAY


def test_a_tray_that_is_lifted_ends_the_tens() -> None:
    procedure = in_tens("5.0", "5.0")
    feed(procedure, EMPTY)
    assert (procedure.state, procedure.tens) == (S.COUNT, ())


def test_after_a_break_nobody_knows_how_many_tens_there_are() -> None:
    procedure = in_tens("5.0", "5.0")
    feed(procedure, press(Person.HOME), press(Person.STAY), settled("31.4"))
    assert procedure.state is S.EMPTY_TRAY


def test_the_rest_can_be_counted_without_tens() -> None:
    procedure = in_tens("5.0", "5.0")
    feed(procedure, press(Person.NO), settled("71.4"))
    assert procedure.state is S.READY
