import pytest

from drivers.errors import BadAddress
from drivers.transports.port_settings import PortSettings, parse_port_settings


def test_without_words_the_usual_settings_hold() -> None:
    assert parse_port_settings(None) == PortSettings(9600, 8, "N", 1)


@pytest.mark.parametrize(
    ("text", "settings"),
    [
        ("9600-8N1", PortSettings(9600, 8, "N", 1)),
        ("1200-7O1", PortSettings(1200, 7, "O", 1)),
        ("115200-8E2", PortSettings(115200, 8, "E", 2)),
    ],
)
def test_settings_are_read(text: str, settings: PortSettings) -> None:
    assert parse_port_settings(text) == settings


@pytest.mark.parametrize(
    "text",
    ["", "9600", "9600-8n1", "9600-8N3", "9600-9N1", "9600-8X1", " 9600-8N1", "9600-8N1 ",
     "96_00-8N1", "-9600-8N1", "9600-8N1\n", "٩٦٠٠-8N1"],
)  # fmt: skip
def test_words_that_are_no_settings_are_refused_with_an_example(text: str) -> None:
    with pytest.raises(BadAddress, match="like 9600-8N1"):
        parse_port_settings(text)


def test_a_speed_that_no_port_has_is_refused_with_those_known() -> None:
    with pytest.raises(BadAddress, match=r"960 is no speed .*, 9600, "):
        parse_port_settings("960-8N1")
