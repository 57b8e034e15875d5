"""How a simulated balance writes its lines: sign, padding, marks, decimal comma, checks."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from drivers.simulated.indicator import Shown, State

CHECKS: MappingProxyType[str, Callable[[bytes], str]] = MappingProxyType(
    {
        "xor": lambda line: f"{_xor(line):02X}",
        "sum": lambda line: f"{sum(line) % 256:02X}",
        "sum of three digits": lambda line: f"{sum(line) % 1000:03d}",
    }
)
_DAY_SECONDS = 86_400


@dataclass(frozen=True, slots=True, kw_only=True)
class LineStyle:
    """One way of writing lines.

    ``layout`` is a format string for str.format with any of these places::

        mark     ``still`` or ``moving``
        basis    GS or NT
        sign     ``plus`` or a minus
        number   the digits without a sign, filled up on the left with ``pad`` to ``width``
        signed   sign and digits together, filled up with spaces to ``width``
        unit     filled up on the left to ``unit_width``
        clock    hours, minutes and seconds that go on
        counter  how many lines there were, in four digits

    ``brackets`` and ``unit_lacks`` say what happens while the balance moves: the last digit stands
    in brackets, the unit is left blank. ``units`` are words for units that have others than usual.
    ``check`` names one of CHECKS, which is added at the end. ``over`` is the whole line of an
    overloaded balance. With ``wrapped`` a line stands between STX and ETX, before its ``end``.
    """

    layout: str
    still: str = "ST"
    moving: str = "US"
    plus: str = "+"
    pad: str = " "
    width: int = 8
    point: str = "."
    unit_width: int = 1
    brackets: bool = False
    unit_lacks: bool = False
    check: str | None = None
    over: str = "OL"
    units: Mapping[str, str] = field(default_factory=dict)
    end: bytes = b"\r\n"
    wrapped: bool = False

    def line(self, shown: Shown, seconds: float, counter: int) -> bytes:
        """The bytes for what the display shows, ``seconds`` after midnight."""
        beyond = shown.state in (State.OVER, State.NOT_ZEROED)
        text = self.over if beyond else self._text(shown, seconds, counter)
        data = text.encode("ascii")
        if self.check is not None:
            data += CHECKS[self.check](data).encode("ascii")
        return (b"\x02" + data + b"\x03" if self.wrapped else data) + self.end

    def _text(self, shown: Shown, seconds: float, counter: int) -> str:
        digits = f"{abs(shown.value):f}".replace(".", self.point)
        sign = "-" if shown.value < 0 else self.plus
        bracketed = self.brackets and shown.moving
        unit = "" if self.unit_lacks and shown.moving else self.units.get(shown.unit, shown.unit)
        return self.layout.format(
            mark=self.moving if shown.moving else self.still,
            basis="NT" if shown.net else "GS",
            sign=sign,
            number=_last_in_brackets(digits.rjust(self.width, self.pad), bracketed),
            signed=_last_in_brackets((sign.strip() + digits).rjust(self.width), bracketed),
            unit=unit.rjust(self.unit_width),
            clock=_clock(seconds),
            counter=f"{counter % 10_000:04d}",
        )


def _last_in_brackets(digits: str, bracketed: bool) -> str:
    return f"{digits[:-1]}[{digits[-1]}]" if bracketed else digits


def _clock(seconds: float) -> str:
    whole = int(seconds) % _DAY_SECONDS
    return f"{whole // 3600:02d}:{whole // 60 % 60:02d}:{whole % 60:02d}"


def _xor(line: bytes) -> int:
    result = 0
    for byte in line:
        result ^= byte
    return result
