import pytest

from drivers.dialects import known_dialects, make_dialect
from drivers.errors import BadAddress
from drivers.events import ReadingReceived
from drivers.packet import Packet
from tests.helpers.sma_frames import frame


@pytest.mark.parametrize("name", known_dialects())
def test_each_known_dialect_can_be_made(name: str) -> None:
    assert make_dialect(name, "the balance").name == name


def test_readings_carry_the_name_of_the_balance() -> None:
    [event] = make_dialect("sma", "pan by the window").feed(Packet(0.0, frame("plain")))
    assert isinstance(event, ReadingReceived)
    assert event.reading.balance == "pan by the window"


def test_an_unknown_dialect_is_refused_with_those_known() -> None:
    known = ", ".join(known_dialects())
    with pytest.raises(BadAddress, match=f"no dialect called 'smb'; known are: {known}"):
        make_dialect("smb", "the balance")
