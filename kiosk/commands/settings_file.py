"""Where a kiosk's settings lie, and how they are read."""

from __future__ import annotations

from codecs import BOM_UTF8
from pathlib import Path

from platformdirs import user_config_path
from pydantic import ValidationError

from kiosk.commands.console import BadInputError
from kiosk.settings import KioskSettings
from kiosk.texts import say


def settings_path() -> Path:
    """``settings.json`` in the user's configuration folder; it need not exist."""
    return user_config_path("gramstand", appauthor=False) / "settings.json"


def read_settings(path: Path | None = None) -> KioskSettings:
    """The settings of this kiosk, the defaults where there is no file.

    BadInputError, with one sentence, for a file that cannot be read or makes no sense.
    """
    path = path or settings_path()
    try:
        # Some editors put a byte order mark first.
        return KioskSettings.model_validate_json(path.read_bytes().removeprefix(BOM_UTF8))
    except FileNotFoundError:
        return KioskSettings()
    except ValidationError as error:
        first = error.errors()[0]
        where = ".".join(str(part) for part in first["loc"])
        why = f"{where}: {first['msg']}" if where else first["msg"]
    except OSError as error:
        why = error.strerror or str(error)
    raise BadInputError(say("kiosk.bad_settings", file=path, why=why))
