"""The rules of the event and what one kiosk remembers: two models, no place of storage."""

from __future__ import annotations

from decimal import Decimal
from enum import StrEnum
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field, StringConstraints

DEMO_TEAMS = (
    "Avocet", "Curlew", "Dunlin", "Goldcrest", "Heron", "Lapwing", "Linnet", "Pipit",
    "Plover", "Redstart", "Robin", "Siskin", "Swift", "Teal", "Wren",
)  # fmt: skip
CUP_MATERIALS = ("rice", "lentils", "beans", "beads", "pasta", "sand")

Name = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1)]


class Over(StrEnum):
    """What an estimate over the actual value earns."""

    MIRRORED = "mirrored"  # 100 x (2 - estimate/actual), 0 from double upward
    ZERO = "zero"


class Paper(StrEnum):
    """The size of the sheets in the printer."""

    A4 = "a4"
    LETTER = "letter"


class Task(StrEnum):
    """What is estimated in a round, in the order of its scores."""

    MASS = "mass"
    COUNT_LOW = "count low"
    COUNT_MIDDLE = "count middle"
    COUNT_HIGH = "count high"
    VOLUME_1 = "volume 1"
    VOLUME_2 = "volume 2"
    VOLUME_3 = "volume 3"


class Weighed(StrEnum):
    """Which mass counts when a handed-in cup was weighed again."""

    LAST = "last"
    FIRST = "first"


class Rules(BaseModel):
    """The rules of the event; leagues differ, so everything that a league may change is here."""

    model_config = ConfigDict(frozen=True)

    cup_target_g: Decimal = Field(default=Decimal(100), gt=0)
    over: Over = Over.MIRRORED
    decimals: int = Field(default=1, ge=0, le=3)
    count_limit: int = Field(default=20_000, gt=0)
    volume_limit_cm3: int = Field(default=4_000, gt=0)
    minutes: int = Field(default=30, gt=0)
    divisions: tuple[Name, ...] = ("Grades 4 to 6", "Grades 7 to 8")
    teams_a_sitting: int = Field(default=20, gt=0)
    medals: int = Field(default=3, ge=0)
    tie_break: tuple[Task, ...] = ()  # the first one decides first; none: places are shared
    protest_minutes: int = Field(default=20, ge=0)
    weighed_again: Weighed = Weighed.LAST
    teams_type: bool = False  # what a team types itself stands for the first typing of its sheet


class KioskSettings(BaseModel):
    """What this kiosk is told once: who is here, what lies on the tables, how it looks."""

    model_config = ConfigDict(extra="ignore")

    place: str = "Larch Hill Middle School"
    teams: tuple[Name, ...] = DEMO_TEAMS
    materials: tuple[Name, ...] = Field(default=CUP_MATERIALS, min_length=1)
    rules: Rules = Rules()
    less_motion: bool = False
    sound: bool = True  # a short tone when a cup of a round is written down
    coach_idle_s: float = Field(default=60, ge=10)  # then the coach's drawers lock themselves
    paper: Paper = Paper.A4
    pixels_per_mm: float | None = Field(default=None, gt=0)
