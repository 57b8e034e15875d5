from collections.abc import Iterator

import pytest

from drivers.dialects import known_dialects, make_dialect, use_shapes, usual_port_settings
from drivers.dialects.sma import Sma
from drivers.errors import BadAddress
from drivers.events import ReadingReceived
from drivers.line_shape import LineShape
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


class Kept:
    """Shapes that were kept, one of them under a name that a dialect has already."""

    def names(self) -> tuple[str, ...]:
        return ("sma", "window")

    def shape(self, name: str) -> LineShape | None:
        settings = {"window": "2400-7E1", "sma": "1200-7O1"}.get(name)
        return None if settings is None else LineShape(name=name, port_settings=settings)


@pytest.fixture
def _kept() -> Iterator[None]:
    use_shapes(Kept())
    yield
    use_shapes(None)


@pytest.mark.usefixtures("_kept")
def test_a_kept_shape_is_a_dialect_by_its_name() -> None:
    assert make_dialect("window", "the balance").name == "window"
    assert usual_port_settings("window") == "2400-7E1"


@pytest.mark.usefixtures("_kept")
def test_a_shape_never_takes_the_place_of_a_dialect() -> None:
    assert isinstance(make_dialect("sma", "the balance"), Sma)
    assert usual_port_settings("sma") is None


@pytest.mark.usefixtures("_kept")
def test_kept_shapes_are_named_among_the_known() -> None:
    with pytest.raises(BadAddress, match=r"known are: .*, sma, window$"):
        make_dialect("smb", "the balance")
