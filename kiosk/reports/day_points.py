"""What is to be seen to on the day, for the printed list and for the one on the screen."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kiosk.reports.allergens import allergy_note
from kiosk.texts import plural, say


@dataclass(frozen=True, slots=True, kw_only=True)
class DayList:
    """What is to be seen to on the day ``day``; jars and boxes by what stands on them."""

    round_name: str
    place: str
    day: str
    cups: int
    jars: tuple[str, ...]
    boxes: tuple[str, ...]
    materials: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """One thing to see to; ``parts`` are ticked one by one, as (label, what is written)."""

    name: str
    text: str
    parts: tuple[tuple[str, str], ...] = ()


def groups(day: DayList) -> Iterator[tuple[str, tuple[Point, ...]]]:
    """The heads of the list and the points below each."""
    jars = tuple((label, say("paper.thing.jar", label=label)) for label in day.jars)
    boxes = tuple((label, say("paper.thing.box", label=label)) for label in day.boxes)
    materials = tuple((material, allergy_note(material)) for material in day.materials)
    yield say("paper.day.balance"), _points("warm", "level", "checked", "turned", "awake")
    yield (
        say("paper.day.things"),
        (
            Point(name="cups", text=plural("paper.day.cups", day.cups)),
            *_points("sizes", "keys"),
            *(_points("same_jar", parts=jars) if jars else ()),
            *(_points("same_box", parts=boxes) if boxes else ()),
        ),
    )
    yield (
        say("paper.day.people"),
        (
            *_points("rulers", "helper", "small_parts"),
            *_points("allergens", parts=materials),
        ),
    )
    yield say("paper.day.spare"), _points("batteries", "pencils")


def _points(*names: str, parts: tuple[tuple[str, str], ...] = ()) -> tuple[Point, ...]:
    return tuple(Point(name=name, text=say(f"paper.day.{name}"), parts=parts) for name in names)
