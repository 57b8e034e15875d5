"""Every word a person sees, found by its key, translated by gettext, filled with values.

``say("cup.weighs", number=7)`` looks the key up in the catalogue (English), asks gettext for the
translation of the English sentence, and fills the named places. ``plural`` does the same for
entries that are pairs (one, many).
"""

from __future__ import annotations

import gettext
import os
from pathlib import Path

from kiosk.texts.catalogue import ENGLISH

LOCALE = Path(__file__).with_name("locale")


def _translations() -> gettext.NullTranslations:
    language = os.environ.get("GRAMSTAND_LANGUAGE")
    return gettext.translation(
        "gramstand", LOCALE, languages=[language] if language else None, fallback=True
    )


_chosen = _translations()


def say(key: str, /, **values: object) -> str:
    """The text of ``key`` with its named places filled; KeyError for a key nobody wrote."""
    entry = ENGLISH[key]
    if not isinstance(entry, str):
        raise TypeError(f"{key} has a singular and a plural: use plural()")
    return _chosen.gettext(entry).format(**values)


def plural(key: str, count: int, /, **values: object) -> str:
    """The text of ``key`` for ``count`` things; the count itself is filled in as ``{count}``."""
    entry = ENGLISH[key]
    if isinstance(entry, str):
        raise TypeError(f"{key} has no plural: use say()")
    return _chosen.ngettext(*entry, count).format(count=count, **values)
