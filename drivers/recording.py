"""What a recording holds: what a port said, with its times, as JSON Lines.

The first line is a Header. Each further one is a Line: bytes as they came, or an empty ``hex`` with
a mark: the port was lost, or is open (again), or the balance told its readability. Whoever does not
know the marks reads them as bytes that did not come.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, PlainSerializer


def _from_hex(text: object) -> object:
    return bytes.fromhex(text) if isinstance(text, str) else text


Hex = Annotated[bytes, BeforeValidator(_from_hex), PlainSerializer(bytes.hex)]
Step = Annotated[Decimal, Field(gt=0), PlainSerializer(float)]


class Header(BaseModel):
    """The first line: what was recorded. ``packets``: each line holds one whole report.

    ``readability_g`` is None where only the recording itself can tell it.
    """

    model_config = ConfigDict(frozen=True)

    recording: Literal[1]
    dialect: str
    packets: bool = False
    readability_g: Step | None = None
    synthetic: bool = False
    note: str = ""


class Line(BaseModel):
    """What happened ``t`` seconds after the recording began.

    ``lost`` is the reason, ``back`` the address that was opened. ``descriptor``, beside ``back``,
    is how a HID scale describes its reports from then on. ``readability_g`` is in grams.
    """

    model_config = ConfigDict(frozen=True)

    t: Annotated[float, Field(ge=0, allow_inf_nan=False)]
    hex: Hex
    lost: str | None = None
    back: str | None = None
    descriptor: Hex | None = None
    readability_g: Step | None = None
