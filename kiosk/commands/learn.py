"""``gramstand learn``: learns how an unknown balance writes its lines, and keeps it by a name.

Nothing is ever sent to the balance.
"""

from __future__ import annotations

import argparse
import shlex
import time
from decimal import Decimal

from drivers.errors import BadAddress, PortUnavailable
from drivers.learning.findings import Learned, Refusal
from drivers.learning.learner import learn
from drivers.line_shape import LineShape
from drivers.passive_listening import USUAL_SETTINGS, Heard, listen_passively
from drivers.port import Port
from drivers.transports import Transport
from drivers.transports.addresses import check_address, is_url
from drivers.transports.hid_addresses import is_hid
from drivers.transports.port_settings import PortSettings, parse_port_settings
from kiosk.commands.console import BadInputError, complain, emit, plain, tell
from kiosk.commands.listen import SIMULATED, seconds_of
from kiosk.commands.shapes import ShapeFiles, checked_name
from kiosk.texts import say
from kiosk.texts.numbers import number, percent

HELP: str = say("learn.help")


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("--scale", required=True, metavar="WHERE", help=say("learn.scale"))
    parser.add_argument("--seconds", required=True, type=seconds_of, metavar="S",
                        help=say("learn.seconds"))  # fmt: skip
    parser.add_argument("--save", required=True, metavar="NAME", help=say("learn.save"))
    parser.add_argument("--port-settings", metavar="9600-8N1", help=say("learn.port_settings"))


def run(options: argparse.Namespace) -> int:
    """Listen, learn and keep: 0, or 1 if nothing was learned. May be BadInputError."""
    name = checked_name(options.save)
    if options.scale == SIMULATED or is_hid(options.scale):
        kind = "simulated" if options.scale == SIMULATED else "hid"
        return _refuse(options, say(f"learn.refused.{kind}"))
    try:
        heard = _heard(options)
    except BadAddress as error:
        raise BadInputError(str(error)) from error
    except PortUnavailable as failure:
        complain(say("listen.lost.detail", detail=failure.detail))
        return _refuse(options, say("learn.refused.port", why=failure.reason))
    settings = None if heard.settings is None or is_url(options.scale) else str(heard.settings)
    found = Refusal.NO_LINES if heard.settings is None else learn(heard.packets, name, settings)
    if isinstance(found, Refusal):
        return _refuse(options, say(f"learn.refused.{found.name.lower()}"))
    return _keep(options, found)


def _heard(options: argparse.Namespace) -> Heard:
    given, where = options.port_settings, options.scale
    known = given is not None or is_url(where)
    candidates = (parse_port_settings(given),) if known else USUAL_SETTINGS

    def open_with(settings: PortSettings) -> Transport:
        return Port(where, settings).open()

    check_address(where)
    complain(say("learn.begin", seconds=number(Decimal(str(options.seconds)))))
    return listen_passively(open_with, candidates, seconds=options.seconds, clock=time.monotonic)


def _keep(options: argparse.Namespace, found: Learned) -> int:
    kept = ShapeFiles()
    try:
        kept.keep(found.shape)
    except OSError as error:
        why = error.strerror or str(error)
        return _refuse(options, say("learn.refused.folder", folder=kept.folder, why=why))
    if options.json:
        emit(_as_json(found))
    else:
        tell(_as_text(found))
    return 0


def _refuse(options: argparse.Namespace, why: str) -> int:
    if options.json:
        emit({"refused": plain(why)})
    else:
        complain(say("learn.refused", why=why))
    return 1


def _as_json(found: Learned) -> dict[str, object]:
    shape = found.shape
    stable, moving = _marks(shape)
    return {
        "name": shape.name,
        "shape": shape.model_dump(mode="json"),
        "unit": shape.unit,
        "stable_mark": stable,
        "moving_mark": moving,
        "readability": shape.readability,
        "confidence": found.confidence,
    }


def _as_text(found: Learned) -> str:
    shape = found.shape
    assert shape.readability is not None  # whoever learns a shape learns its steps
    stable, moving = (repr(mark) if mark else say("learn.no_mark") for mark in _marks(shape))
    return say(
        "learn.done",
        name=shape.name,
        unit=shape.unit,
        readability=number(shape.readability),
        stable=stable,
        moving=moving,
        confidence=percent(Decimal(str(found.confidence)) * 100, 0),
        option=shlex.quote(shape.name),
    )


def _marks(shape: LineShape) -> tuple[str | None, str | None]:
    """What says stable and what says moving; a unit that moving lines lack says stable."""
    stable = shape.stable.text if shape.stable else None
    moving = shape.moving.text if shape.moving else None
    if shape.unit_lacks_while_moving and stable is None and moving is None:
        stable = shape.unit
    return stable, moving
