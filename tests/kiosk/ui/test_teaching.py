"""Teaching the kiosk balances that nobody knows: through real ports, without a window."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

import pytest

from drivers.dialects.lines import Lines
from drivers.errors import BadAddress
from drivers.events import ReadingReceived
from drivers.packet import Packet
from drivers.passive_line import LineEvent, PassiveLine
from drivers.passive_listening import USUAL_SETTINGS
from drivers.transports.port_settings import PortSettings
from kiosk.procedures.procedure import Person
from kiosk.ui.presenters.teach_views import TeachView
from kiosk.ui.teaching import Teaching
from tests.helpers.garbling_port import GarblingPort
from tests.helpers.line_styles import KINDS, Kind, Stream, kind
from tests.helpers.pan import press
from tests.helpers.taught import Keeper, Taught

# Lines with several numbers, or with marks of their own: none of them is read without a shape.
UNKNOWN = ("clock before", "station and id", "counter, commas", "no unit while moving")
CLOCK = KINDS["clock before"]

Start = Callable[..., Taught]


@pytest.fixture
def start() -> Iterator[Start]:
    opened: list[Taught] = []

    def start(chosen: Kind = CLOCK, keeper: Keeper | None = None, **more: object) -> Taught:
        opened.append(Taught(chosen, keeper, **more))
        return opened[-1]

    yield start
    for each in opened:
        each.close()


def found(view: TeachView) -> dict[str, str]:
    return {finding.kind: finding.text for finding in view.findings}


def tinted(view: TeachView) -> dict[str, str]:
    """Of the newest line the characters of each kind."""
    line = view.lines[-1]
    return {span.kind: line.text[span.start : span.end] for span in view.lines[-1].spans}


@pytest.mark.parametrize("name", UNKNOWN)
def test_a_balance_is_learned_and_kept_in_three_steps(start: Start, name: str) -> None:
    chosen = KINDS[name]
    taught = start(chosen)
    taught.wait(1.5)
    assert taught.title == "Leave the pan empty."
    taught.wait(3.0)
    assert taught.title == "Put a cup on the pan."
    for grams in (52.18, 30.4, 71.0):
        taught.put(grams)
        assert taught.title == "Now take it off."
        taught.put(0.0)
    assert taught.title == "Keep it as Scale 1?"
    taught.press(Person.KEEP)
    shape = taught.teaching.learned
    assert shape is not None
    assert taught.keeper.shapes == {"Scale 1": shape}
    assert shape.port_settings == "9600-8N1"
    stream = Stream(chosen)
    stream.run(1.0)
    stream.put(12.3)
    shown = stream.run(3.0)
    dialect = Lines("pan", shape)
    events = [event for packet in stream.packets for event in dialect.feed(packet)]
    masses = [event.reading.value for event in events if isinstance(event, ReadingReceived)]
    assert masses[-1] == shown


@pytest.mark.parametrize("name", UNKNOWN)
def test_such_lines_give_no_mass_without_teaching(name: str) -> None:
    stream = Stream(KINDS[name])
    stream.put(12.3)
    stream.run(3.0)
    dialect = Lines("pan")
    events = [event for packet in stream.packets for event in dialect.feed(packet)]
    readings = [event.reading for event in events if isinstance(event, ReadingReceived)]
    if name == "no unit while moving":  # its number is plain, its mark of motion is not
        assert all(reading.stable is None for reading in readings)
    else:
        assert all(reading.grams is None for reading in readings)


def test_what_is_found_stands_on_the_lines_and_below(start: Start) -> None:
    taught = start()
    taught.wait(4.0)
    assert found(taught.teaching.view())["number"] == ""
    taught.load()
    taught.put(30.0)
    view = taught.teaching.view()
    assert found(view) == {"number": "30.00", "unit": "g", "still": "ST", "moving": "US"}
    assert tinted(view) == {"still": "ST", "number": "+   30.00", "unit": "g"}
    assert view.step_found.startswith("[b]step 0.01\u00a0g[/b]")
    assert view.progress == "on and off 2 of 3"


def test_the_pan_asks_whether_the_mass_is_right(start: Start) -> None:
    taught = start()
    taught.wait(4.0)
    assert taught.teaching.pan().number == ""
    taught.load()
    taught.put(30.0)
    pan = taught.teaching.pan()
    assert (pan.label, pan.number, pan.unit, pan.line1) == (
        "we read", "30.00", "g", "is that right?",
    )  # fmt: skip
    assert pan.phase == "stable"
    taught.put(60.0, 0.3)
    assert taught.teaching.pan().phase == "moving"


def test_one_load_is_enough_for_whoever_sees_that_it_is_right(start: Start) -> None:
    taught = start()
    taught.wait(4.0)
    taught.load()
    taught.press(Person.GO_ON)
    assert taught.title == "Keep it as Scale 1?"
    taught.press(Person.KEEP)
    assert taught.teaching.learned is not None


def test_nothing_can_be_kept_before_something_is_learned(start: Start) -> None:
    taught = start()
    taught.wait(4.0)
    taught.press(Person.GO_ON)
    taught.press(Person.KEEP)
    assert taught.teaching.learned is None
    assert taught.title == "Put a cup on the pan."


def test_once_more_goes_back_to_the_loads(start: Start) -> None:
    taught = start()
    taught.wait(4.0)
    taught.load()
    taught.press(Person.GO_ON)
    taught.press(Person.MORE)
    assert taught.title == "Put a cup on once more."
    taught.load()
    assert taught.title == "Keep it as Scale 1?"


def test_the_name_is_one_that_is_free(start: Start) -> None:
    taught = start()
    taught.wait(4.0)
    taught.load()
    taught.press(Person.GO_ON)
    taught.press(Person.KEEP)
    assert taught.teaching.learned is not None
    again = start(keeper=taught.keeper)
    assert again.teaching.name == "Scale 2"


def test_what_cannot_be_written_down_can_be_kept_again(start: Start) -> None:
    taught = start(keeper=Keeper(error=OSError(28, "No space left on device")))
    taught.wait(4.0)
    taught.load()
    taught.press(Person.GO_ON)
    taught.press(Person.KEEP)
    assert "No space left on device" in taught.teaching.view().note
    taught.keeper.error = None
    taught.press(Person.KEEP)
    assert taught.teaching.learned is not None


# Refusals ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("chosen", "title"),
    [
        (kind("{mark} {signed} {unit} N {number} g", "S", "D", width=9), "Two numbers"),
        (kind("{mark} {signed}", "S", "D", width=9), "No unit is sent."),
    ],
)
def test_what_cannot_be_learned_is_said_with_a_way_on(
    start: Start, chosen: Kind, title: str
) -> None:
    taught = start(chosen)
    taught.wait(4.0)
    taught.load()
    taught.wait(2.0)
    assert taught.title.startswith(title)
    view = taught.teaching.view()
    assert view.note
    assert view.lines
    assert view.main is not None
    assert view.main.says is not None
    taught.press(view.main.says.kind)
    assert taught.title == "Leave the pan empty."
    taught.wait(4.0)
    assert taught.title == "Put a cup on the pan."


def test_a_load_that_changes_nothing_gets_advice(start: Start) -> None:
    taught = start(kind("{mark} +   12.00 {unit}", "ST", "US"))
    taught.wait(4.0)
    taught.load()
    assert taught.teaching.view().note == ""
    taught.wait(25.0)
    assert taught.teaching.view().note.startswith("No number follows yet.")
    assert taught.title == "Put a cup on the pan."


def test_a_load_that_stays_gets_advice(start: Start) -> None:
    taught = start()
    taught.wait(4.0)
    taught.put(52.18, 30.0)
    assert taught.title == "Now take it off."
    assert taught.teaching.view().note.startswith("The number has not come back")
    taught.put(0.0)
    assert taught.teaching.view().note == ""


def test_silence_is_said_and_ends_by_itself(start: Start) -> None:
    taught = start()
    taught.balance.device.fall_silent()
    taught.wait(8.0)
    assert taught.title == "Nothing comes."
    taught.balance.device.speak_again()
    taught.wait(1.0)
    assert taught.title == "Leave the pan empty."


def test_a_pulled_cable_is_said_and_the_lesson_begins_again(start: Start) -> None:
    taught = start()
    taught.wait(4.0)
    taught.put(52.18)
    taught.balance.port.unplug()
    taught.wait(1.0)
    assert taught.title == "The scale is not heard."
    assert taught.teaching.pan().phase == "unplugged"
    taught.balance.port.plug()
    taught.put(0.0, 1.5)
    assert taught.title == "Leave the pan empty."


def test_starting_over_listens_anew(start: Start) -> None:
    taught = start()
    taught.wait(4.0)
    taught.load()
    taught.press(Person.NO)
    assert taught.title == "Leave the pan empty."
    assert taught.teaching.view().lines == ()
    taught.wait(4.0)
    taught.load()
    assert found(taught.teaching.view())["still"] == "ST"


def test_a_hid_scale_cannot_be_taught() -> None:
    with pytest.raises(BadAddress):
        Teaching(
            where="hid:1209:0001:A7", keeper=Keeper(), clock=lambda: 0.0, changed=lambda: None,
            later=lambda call: call(), stepped=True,
        )  # fmt: skip


# Port settings -------------------------------------------------------------------------------


class AtOtherSettings:
    """A Teaching at a port whose settings nobody said; the port's turns are the clock."""

    def __init__(self, right: PortSettings) -> None:
        self.stream = Stream(CLOCK)
        self.port = GarblingPort(right, self._said)
        self.teaching = Teaching(
            where="scripted", keeper=Keeper(), clock=lambda: self.port.now,
            changed=lambda: None, later=lambda call: call(), stepped=True, listen=self._listen,
        )  # fmt: skip
        self.teaching.start()

    def _listen(self, publish: Callable[[LineEvent], object]) -> PassiveLine:
        return PassiveLine(
            "scripted", USUAL_SETTINGS, self.port.with_settings, publish=publish,
            clock=lambda: self.port.now, wait=self.port.wait,
        )  # fmt: skip

    def _said(self, now: float) -> bytes:
        before = len(self.stream.packets)
        self.stream.run(now - self.stream.now)
        packets: list[Packet] = self.stream.packets[before:]
        return b"".join(packet.data for packet in packets)

    def wait(self, turns: int) -> None:
        for _ in range(turns):
            self.teaching.pump()
            self.teaching.tick()


def test_the_port_settings_are_found_and_kept() -> None:
    right = USUAL_SETTINGS[4]
    heard = AtOtherSettings(right)
    heard.wait(100)
    for grams in (52.18, 0.0):
        heard.stream.put(grams)
        heard.wait(50)
    for person in (Person.GO_ON, Person.KEEP):
        heard.teaching.press(press(person))
    assert heard.teaching.learned is not None
    assert heard.teaching.learned.port_settings == str(right)


def test_garbage_at_all_settings_is_said_and_shown() -> None:
    heard = AtOtherSettings(PortSettings(300))
    heard.wait(300)
    view = heard.teaching.view()
    assert view.title == "This cannot be read."
    assert view.main is not None
    assert view.main.says == press(Person.NO)
    heard.port.right = USUAL_SETTINGS[0]
    heard.wait(200)
    assert heard.teaching.view().title != "This cannot be read."


def test_a_study_never_runs_in_the_screens_thread(start: Start) -> None:
    taught = start()
    jobs: list[object] = []
    taught.teaching._line.between_reads = jobs.append  # type: ignore[method-assign]
    taught.wait(4.0)
    assert len(jobs) == 1  # and no other one before that one is done
    assert isinstance(jobs[0], partial)
