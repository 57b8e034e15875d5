"""``gramstand volume``: a container's volume from its outside sizes, or from the water it takes."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from decimal import Decimal

from kiosk.commands.console import BadInputError, emit, tell
from kiosk.commands.count_cells import at_most, positive
from kiosk.estimating.volume import RULER, Readings, Volume, box, cylinder, tapered
from kiosk.estimating.water import by_water
from kiosk.settings import Rules
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.texts.typed import typed_number

HELP = say("command.volume.help")
LONGEST = 10_000  # centimetres
HEAVIEST = 10_000_000  # grams
SIZES: dict[str, tuple[str, ...]] = {
    "box": ("length", "width", "height"),
    "cylinder": ("diameter", "height"),
    "tapered": ("top", "bottom", "height"),
}
SHAPES: dict[str, Callable[..., Volume]] = {"box": box, "cylinder": cylinder, "tapered": tapered}
WATER = "water"


def configure(parser: argparse.ArgumentParser) -> None:
    """Add a command of its own for each shape."""
    shapes = parser.add_subparsers(dest="shape", required=True, metavar="SHAPE")
    for shape, sizes in SIZES.items():
        options = _shape(shapes, shape)
        for size in sizes:
            _add_readings(options, size, "CM")
        options.add_argument("--ruler", metavar="D", help=say("command.volume.ruler"))
    water = _shape(shapes, WATER)
    _add_readings(water, "grams", "M")
    water.add_argument("--celsius", metavar="T", required=True, help=say("command.volume.celsius"))
    water.add_argument("--readability", metavar="D", help=say("command.volume.readability"))


def _shape(
    shapes: argparse._SubParsersAction[argparse.ArgumentParser], shape: str
) -> argparse.ArgumentParser:
    text = say(f"command.volume.{shape}")
    parser = shapes.add_parser(shape, help=text, description=text, allow_abbrev=False)
    # May stand behind the shape too; where it does not, what stood before it holds.
    parser.add_argument(
        "--json", action="store_true", default=argparse.SUPPRESS, help=say("command.json")
    )
    return parser


def _add_readings(parser: argparse.ArgumentParser, name: str, placeholder: str) -> None:
    parser.add_argument(
        f"--{name}",
        metavar=placeholder,
        action="append",
        required=True,
        help=say(f"command.volume.{name}"),
    )


def run(options: argparse.Namespace) -> int:
    """Print the volume; 0. BadInputError for what cannot be read."""
    try:
        volume = _by_water(options) if options.shape == WATER else _by_sizes(options)
    except ValueError as trouble:
        raise BadInputError(str(trouble)) from trouble
    if options.json:
        emit(
            {
                "volume_cm3": float(volume.cm3),
                "low": float(volume.low),
                "high": float(volume.high),
            }
        )
    else:
        tell("\n".join(_as_text(volume, options)))
    return 0


def _by_sizes(options: argparse.Namespace) -> Volume:
    sizes = [_readings(options, name, LONGEST) for name in SIZES[options.shape]]
    ruler = RULER if options.ruler is None else _up_to(LONGEST, options.ruler, "ruler")
    return SHAPES[options.shape](*sizes, ruler=ruler)


def _by_water(options: argparse.Namespace) -> Volume:
    step = options.readability
    return by_water(
        _readings(options, "grams", HEAVIEST),
        typed_number(options.celsius, say("command.name.celsius")),
        None if step is None else _up_to(HEAVIEST, step, "readability"),
    )


def _readings(options: argparse.Namespace, name: str, limit: int) -> Readings:
    return Readings(tuple(_up_to(limit, text, name) for text in getattr(options, name)))


def _up_to(limit: int, text: str, name: str) -> Decimal:
    return at_most(limit, positive(text, name), text, name)


def _as_text(volume: Volume, options: argparse.Namespace) -> list[str]:
    limit = Rules().volume_limit_cm3
    lines = [
        say(
            "command.volume.done",
            volume=number(volume.rounded),
            low=number(volume.low),
            high=number(volume.high),
        )
    ]
    if volume.cm3 > limit:
        lines.append(say("command.volume.over_limit", limit=number(limit)))
    if options.shape == WATER and len(options.grams) == 1:
        lines.append(say("command.volume.filled"))
    return lines
