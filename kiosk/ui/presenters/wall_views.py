"""The clock for the whole class: what is left, a bead a minute, one sentence."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from math import ceil

from kiosk.rounds.clock import Clock, Going, clock
from kiosk.rounds.state import RoundState
from kiosk.texts import plural, say
from kiosk.ui.presenters.views import SheetView

SIGN_STANDS = 0.5  # minutes


@dataclass(frozen=True, slots=True, kw_only=True)
class WallView(SheetView):
    """The time left in large digits; ``beads`` of ``of`` minutes, the last one ``part`` full.

    ``sentence`` tells one thing; with ``cup`` an empty cup stands before it, as a ``sign`` it asks
    for a look. ``quiet`` says that nothing runs: the digits are soft then.
    """

    screen: str = "wall"
    time: str = ""
    beads: int = 0
    part: float = 0.0
    of: int = 0
    legend: str = ""
    corner: str = ""
    sentence: str = ""
    cup: bool = False
    sign: bool = False
    quiet: bool = False


def time_left(left: timedelta) -> str:
    """Minutes and seconds, begun seconds counted as whole ones."""
    seconds = max(0, ceil(left.total_seconds()))
    return f"{seconds // 60}:{seconds % 60:02d}"


def clock_words(state: RoundState, now: datetime) -> tuple[str, ...]:
    """What the strip says of the sitting that is under way, nothing while none is."""
    for sitting in state.sittings:
        found = clock(state, sitting, now)
        if found.going in (Going.RUNNING, Going.PAUSED):
            left = time_left(found.left)
            return (say(f"clock.strip.{found.going.name.lower()}", left=left),)
    return ()


def wall_view(found: Clock, *, minutes: int, round_name: str, cups_in: int, cups: int) -> WallView:
    """What the class sees; `cups_in` of `cups` were handed in."""
    whole, seconds = divmod(found.left.total_seconds(), 60)
    sentence, cup = _sentence(found, cups_in, cups)
    return WallView(
        time=time_left(found.left),
        beads=int(whole),
        part=seconds / 60,
        of=minutes,
        legend=say("wall.legend"),
        corner=round_name,
        sentence=sentence,
        cup=cup,
        sign=_sign(found) is not None,
        quiet=found.going is not Going.RUNNING,
    )


def _sentence(found: Clock, cups_in: int, cups: int) -> tuple[str, bool]:
    if found.going is Going.NOT_STARTED:
        return say("wall.ready"), False
    if found.going is Going.PAUSED:
        if not found.reason:
            return say("wall.paused.plain"), False
        return say("wall.paused", reason=found.reason), False
    if found.going is Going.OVER:
        if found.behind:
            return plural("wall.behind", len(found.behind)), False
        return say("wall.over"), False
    sign = _sign(found)
    if sign is not None:
        return say(f"wall.sign.{sign}"), False
    return say("wall.cups", done=cups_in, of=cups), True


def _sign(found: Clock) -> int | None:
    """The minutes of the sign that stands now, if one does."""
    sign = found.sign() if found.going is Going.RUNNING else None
    if sign is None or found.left <= timedelta(minutes=sign - SIGN_STANDS):
        return None
    return sign
