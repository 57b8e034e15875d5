"""The drawer of the scale: what is chosen, by whom, and what is sent to it."""

from __future__ import annotations

import pytest

from drivers.errors import BadAddress, Reason
from drivers.events import Back, Identified, Lost, ReadingReceived
from drivers.line_shape import LineShape
from drivers.speaking import TRIAL_S
from kiosk.ui.connection import ScaleChoice
from kiosk.ui.presenters.scale_facts import FoundScale, ScaleFacts, ScaleKind
from kiosk.ui.scale_drawer import ScaleDrawer
from tests.helpers.pan import shown

CABLE = FoundScale(where="/dev/ttyUSB0", kind=ScaleKind.SERIAL, described="Bridge")
USB = FoundScale(where="hid:1209:0001:A7", kind=ScaleKind.HID, described="Larch Hill Pan")
BACK = Back(where=CABLE.where, at=0.0)


class Lesson:
    """Stands in for the teaching of the scale at an address."""

    def __init__(self, where: str) -> None:
        self.where = where
        self.learned: LineShape | None = None
        self.closed = False

    def close(self) -> None:
        self.closed = True


class Opened:
    """A drawer whose scales are played; `used` lists what was to be used, in order."""

    def __init__(self, *found: FoundScale, kept: tuple[str, ...] = ()) -> None:
        self.used: list[ScaleChoice] = []
        self.remembered: list[str] = []
        self.refused: str | None = None
        self.taught: list[Lesson] = []
        self.drawer = ScaleDrawer(
            facts=ScaleFacts(),
            user=self,
            look=lambda: (list(found), ""),
            kept=lambda: kept,
            remember=self.remembered.append,
            changed=lambda: None,
        )
        self.facts = self.drawer.facts

    def use_scale(self, choice: ScaleChoice) -> None:
        if self.refused:
            raise BadAddress(self.refused)
        self.used.append(choice)

    def teach_scale(self, where: str) -> Lesson:
        self.taught.append(Lesson(where))
        return self.taught[-1]

    def dialects(self) -> list[str | None]:
        return [choice.dialect for choice in self.used]

    def nothing_comes(self) -> None:
        """The port is open for as long as one trial takes, and silent."""
        self.drawer.heard(BACK)
        self.drawer.tick(0.0)
        self.drawer.tick(TRIAL_S)


def test_looking_around_uses_nothing() -> None:
    opened = Opened(CABLE, USB)
    opened.drawer.look_around()
    assert [scale.where for scale in opened.facts.found] == [
        CABLE.where, USB.where, "typed", "simulated",
    ]  # fmt: skip
    assert opened.used == []


def test_a_cable_is_listened_to_first_and_asked_last() -> None:
    opened = Opened(CABLE, kept=("Scale 1",))
    opened.drawer.choose(CABLE.where)
    assert opened.facts.trying
    opened.nothing_comes()
    opened.nothing_comes()
    assert opened.dialects() == ["lines", "Scale 1", "sma"]
    assert opened.remembered == []


def test_what_is_understood_is_remembered_with_its_dialect() -> None:
    opened = Opened(CABLE)
    opened.drawer.choose(CABLE.where)
    opened.nothing_comes()
    opened.drawer.heard(Identified(name="pan", capacity=None, readability=None, at=3.0))
    assert not opened.facts.trying
    (kept,) = opened.remembered
    assert ScaleChoice.from_text(kept) == ScaleChoice(where=CABLE.where, dialect="sma")


def test_a_scale_that_nobody_understands_is_only_listened_to() -> None:
    opened = Opened(CABLE)
    opened.drawer.choose(CABLE.where)
    opened.nothing_comes()
    opened.nothing_comes()
    assert (opened.facts.trying, opened.facts.understood) == (False, False)
    assert opened.dialects()[-1] == "lines"


def test_an_unplugged_cable_proves_nothing() -> None:
    opened = Opened(CABLE)
    opened.drawer.choose(CABLE.where)
    opened.drawer.heard(Lost(reason=Reason.MISSING, detail="", at=0.0))
    opened.drawer.tick(0.0)
    opened.drawer.tick(10 * TRIAL_S)
    assert opened.dialects() == ["lines"]


def test_a_usb_scale_needs_no_trial() -> None:
    opened = Opened(USB)
    opened.drawer.choose(USB.where)
    assert opened.used == [ScaleChoice(where=USB.where)]
    assert not opened.facts.trying
    assert len(opened.remembered) == 1


def test_the_only_usb_scale_is_used_by_itself() -> None:
    opened = Opened(USB)
    assert opened.drawer.by_itself(None)
    assert opened.used == [ScaleChoice(where=USB.where)]


@pytest.mark.parametrize("found", [(), (CABLE,), (CABLE, USB)])
def test_otherwise_a_person_has_to_say_which(found: tuple[FoundScale, ...]) -> None:
    opened = Opened(*found)
    assert not opened.drawer.by_itself(None)
    assert opened.used == []


def test_the_one_chosen_last_is_used_again_as_it_spoke_then() -> None:
    opened = Opened(CABLE, USB)
    last = ScaleChoice(where=CABLE.where, dialect="sma")
    assert opened.drawer.by_itself(last)
    assert opened.used == [last]


def test_the_one_chosen_last_is_not_used_when_it_is_gone() -> None:
    opened = Opened()
    assert not opened.drawer.by_itself(ScaleChoice(where=CABLE.where, dialect="sma"))


def test_what_cannot_be_used_says_why_and_is_not_remembered() -> None:
    opened = Opened(USB)
    opened.refused = "the hidapi library is missing"
    opened.drawer.choose(USB.where)
    assert opened.facts.problem == "the hidapi library is missing"
    assert opened.facts.chosen is None
    assert opened.remembered == []


def test_masses_end_the_trial() -> None:
    opened = Opened(CABLE)
    opened.drawer.choose(CABLE.where)
    for at in (0.1, 0.2):
        opened.drawer.heard(ReadingReceived(reading=shown("12.3", at)))
    assert (opened.facts.trying, opened.facts.dialect) == (False, "lines")


@pytest.mark.parametrize("text", [None, "", "{", "[]", '{"nowhere": 1}', "7"])
def test_what_is_no_choice_any_more_is_none(text: str | None) -> None:
    assert ScaleChoice.from_text(text) is None


# Teaching ------------------------------------------------------------------------------------


def not_understood() -> Opened:
    opened = Opened(CABLE)
    opened.drawer.choose(CABLE.where)
    opened.nothing_comes()
    opened.nothing_comes()
    opened.drawer.teach()
    return opened


def test_a_scale_that_was_taught_is_used_and_remembered_as_it_was_learned() -> None:
    opened = not_understood()
    (lesson,) = opened.taught
    lesson.learned = LineShape(name="Scale 1")
    opened.drawer.end_teaching()
    assert lesson.closed
    assert opened.used[-1] == ScaleChoice(where=CABLE.where, dialect="Scale 1")
    assert opened.remembered == [opened.used[-1].as_text()]
    assert opened.facts.understood


def test_teaching_that_led_nowhere_leaves_the_scale_as_it_was() -> None:
    opened = not_understood()
    before = opened.used[-1]
    opened.drawer.end_teaching()
    opened.drawer.end_teaching()
    assert opened.used[-2:] == [before, before]
    assert not opened.facts.understood
    assert opened.remembered == []


def test_only_what_sends_lines_is_taught() -> None:
    opened = Opened(USB)
    opened.drawer.choose(USB.where)
    opened.drawer.teach()
    assert opened.taught == []
    assert opened.drawer.teaching is None
