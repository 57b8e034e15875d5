"""What is understood of a balance so far: pure, with studies that a test makes up."""

from __future__ import annotations

from drivers.learning.findings import Learned, Refusal, Study
from drivers.line_shape import LineShape
from drivers.packet import Packet
from drivers.passive_line import SettingsTried
from drivers.transports.port_settings import PortSettings
from kiosk.ui.lesson import MOST_BYTES, NO_LINES_S, STUDY_EVERY_S, Lesson, Stage

LINE = b"S      0.00 g\r\n"
LEARNED = Learned(shape=LineShape(name="it"), confidence=0.9)
NEVER = Study(found=Refusal.NEVER_CHANGED)


def heard(lines: int = 30, every: float = 0.1) -> Lesson:
    made = Lesson(0.0)
    for place in range(1, lines + 1):
        made.heard(Packet(place * every, LINE))
    made.tick(lines * every)
    return made


def studied(made: Lesson, *studies: Study) -> Lesson:
    for study in studies:
        made.studied(study, made.watched_for)
        made.tick(made.now + STUDY_EVERY_S)
    return made


def test_one_study_at_a_time() -> None:
    made = heard()
    assert made.to_study() is not None
    made.tick(made.now + 10)
    assert made.to_study() is None
    made.studied(NEVER, made.watched_for)
    made.tick(made.now + STUDY_EVERY_S)
    assert made.to_study() is not None


def test_a_study_looks_at_no_more_than_it_can_in_time() -> None:
    made = heard(lines=4000, every=0.01)
    packets = made.to_study()
    assert packets is not None
    assert sum(len(packet.data) for packet in packets) <= MOST_BYTES
    assert packets[-1].at == made.now


def test_a_study_of_what_was_dropped_is_dropped() -> None:
    made = heard()
    before = made.watched_for
    made.heard(SettingsTried(settings=PortSettings(4800), all_failed=False, at=4.0))
    made.studied(Study(found=LEARNED, loads=3), before)
    assert made.learned is None


def test_a_refusal_counts_once_it_stays() -> None:
    two = Study(found=Refusal.TWO_FIELDS)
    made = studied(heard(), two)
    assert made.refusal is None
    assert studied(made, two).refusal is Refusal.TWO_FIELDS
    assert studied(made, Study(found=LEARNED, loads=1)).refusal is None


def test_what_is_learned_outlasts_a_study_that_saw_less() -> None:
    made = studied(heard(), Study(found=LEARNED, loads=2), NEVER)
    assert made.learned == LEARNED
    assert made.loads == (2, 3)


def test_three_loads_are_enough_once_the_pan_is_empty() -> None:
    made = studied(heard(), Study(found=LEARNED, loads=3, loaded=True))
    assert made.stage is Stage.TAKE_OFF
    assert studied(made, Study(found=LEARNED, loads=3)).stage is Stage.NAMING


def test_few_lines_are_not_called_unreadable_too_soon() -> None:
    few = Study(found=Refusal.NO_LINES)
    made = studied(heard(lines=3, every=1.5), few)
    assert made.refusal is None
    made.tick(NO_LINES_S + 2)
    assert made.refusal is Refusal.NO_LINES
