"""What presenters may look at beside the procedure: who is out, what was tried, the settings."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from decimal import Decimal

from kiosk.records.entries import BalanceChecked, CupOut
from kiosk.settings import KioskSettings
from kiosk.texts import say
from kiosk.texts.catalogue import ENGLISH
from kiosk.ui.presenters.scale_facts import ScaleFacts
from kiosk.ui.presenters.views import CupMark
from kiosk.weighing.pan_history import PanPast


@dataclass(slots=True)
class TableFacts:
    """What is known at the table, kept up to date by the desk."""

    settings: KioskSettings = field(default_factory=KioskSettings)
    simulated: bool = False
    typed: bool = False  # an adult types what the scale shows
    cups: list[CupOut] = field(default_factory=list)
    team: str | None = None  # None: nobody yet, "": just trying
    material: str = ""
    readability: Decimal | None = None
    errors: tuple[float, ...] = ()  # signed per cent of the team's last tries, oldest first
    keys_kept: int = 0
    used_letters: tuple[str, ...] = ()
    used_boxes: tuple[str, ...] = ()  # numbers of boxes that have a key
    covered: bool = False  # the coach covered the big number
    team_page: int = 0
    letter: str = ""
    scale: ScaleFacts = field(default_factory=ScaleFacts)
    past: PanPast = field(default_factory=PanPast)  # the last seconds of the pan
    last_check: BalanceChecked | None = None
    not_stored: int = 0  # what is captured and waits for a server that is away
    printed: tuple[str, ...] = ()  # where the papers of the last key are, or why they are not

    def some_marks(self, most: int, mine: int | None) -> tuple[CupMark, ...]:
        """As many of the cups that are out as a row holds, one's own always among them."""
        others = [mark for mark in self.marks() if mark.number != mine]
        own = [mark for mark in self.marks(mine=mine) if mark.number == mine]
        return tuple(sorted([*own, *others[: most - len(own)]], key=lambda mark: mark.number))

    def marks(self, *, mine: int | None = None, chosen: int | None = None) -> tuple[CupMark, ...]:
        """The cups that are out, lowest number first."""
        return cup_marks(self.cups, mine=mine, chosen=chosen)


def cup_marks(
    cups: Iterable[CupOut], *, mine: int | None = None, chosen: int | None = None
) -> tuple[CupMark, ...]:
    """Cups with the names of their pairs, lowest number first."""
    return tuple(
        CupMark(
            number=cup.number,
            name=cup.team or say("team.trying"),
            look="chosen" if cup.number == chosen else "yours" if cup.number == mine else "out",
        )
        for cup in sorted(cups, key=lambda cup: cup.number)
    )


def team_name(team: str | None) -> str:
    """How the strip calls a team."""
    return say("strip.team", team=team) if team else say("strip.trying")


def material_name(material: str) -> str:
    """The word for a material; a name that a kiosk was told stands for itself."""
    key = f"material.{material}"
    return say(key) if key in ENGLISH else material
