"""Where the shapes of lines are kept that were learned: one file each, found by its name."""

from __future__ import annotations

import os
from pathlib import Path

from platformdirs import user_config_path

from drivers.dialects import known_dialects, use_shapes
from drivers.errors import BadShape
from drivers.line_shape import LineShape, shape_from_json, shape_to_json
from kiosk.commands.console import BadInputError
from kiosk.texts import say

LONGEST_NAME = 40
_ENDING = ".json"
_BESIDE_LETTERS = " ._-"


def shapes_folder() -> Path:
    """``balances`` in the user's configuration folder; it need not exist."""
    return user_config_path("gramstand", appauthor=False) / "balances"


class ShapeFiles:
    """The shapes in a folder; see drivers.dialects.KeptShapes."""

    def __init__(self, folder: Path | None = None) -> None:
        self.folder = folder or shapes_folder()

    def names(self) -> tuple[str, ...]:
        """The names of all, in order; none if the folder cannot be read."""
        try:
            found = [file.stem for file in self.folder.iterdir() if file.suffix == _ENDING]
        except OSError:
            return ()
        return tuple(sorted(name for name in found if is_name(name)))

    def shape(self, name: str) -> LineShape | None:
        """The shape of that name, None if there is none; BadShape if it cannot be used."""
        if not is_name(name):
            return None
        file = self._file(name)
        try:
            shape = shape_from_json(file.read_bytes())
        except FileNotFoundError:
            return None
        except OSError as error:
            why = error.strerror or str(error)
        except BadShape as error:
            why = str(error)
        else:
            return shape.model_copy(update={"name": name})  # the file may have been copied
        raise BadShape(say("shape.broken", name=repr(name), file=file, why=why))

    def keep(self, shape: LineShape) -> None:
        """Write it down, in place of one of the same name, or not at all. May raise OSError."""
        self.folder.mkdir(parents=True, exist_ok=True)
        file = self._file(shape.name)
        beside = file.with_suffix(".new")
        beside.write_text(shape_to_json(shape), encoding="utf-8")
        os.replace(beside, file)

    def _file(self, name: str) -> Path:
        return self.folder / f"{name}{_ENDING}"


def use_kept_shapes() -> None:
    """Let ``--dialect`` know what was learned."""
    use_shapes(ShapeFiles())


def is_name(text: str) -> bool:
    """Whether a shape may have that name, which becomes a file's."""
    return (
        0 < len(text) <= LONGEST_NAME
        and text[0].isalnum()
        and text[-1] not in " ."
        and all(char.isalnum() or char in _BESIDE_LETTERS for char in text)
    )


def checked_name(text: str) -> str:
    """The name for a shape; BadInputError if it cannot be one, or a dialect has it."""
    if not is_name(text):
        raise BadInputError(say("shape.bad_name", name=repr(text)))
    if text.casefold() in known_dialects():
        raise BadInputError(say("shape.taken", name=repr(text)))
    return text
