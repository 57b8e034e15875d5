"""Where files go to and come from: the user's own folder, and whatever is plugged in."""

from __future__ import annotations

import os
import string
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path

from kiosk.reports.saving import papers_folder
from kiosk.texts import say

# Where desktops mount what is plugged in: udisks on Linux, macOS.
_MOUNTED = ("/media", "/run/media", "/Volumes")
_DEPTH = 2  # /media/USER/STICK
_TABLES = ("weighings.csv", "round_notes.csv")  # by which exported records are known


def places(roots: Sequence[str] = _MOUNTED) -> list[Path]:
    """The user's folder first, then sticks that can be written to."""
    found = [stick for root in roots for stick in _mounted(Path(root), _DEPTH)]
    if sys.platform == "win32":
        drives = (Path(f"{letter}:\\") for letter in string.ascii_uppercase[3:])
        found += [drive for drive in drives if drive.exists()]
    return [papers_folder(), *found]


def exported_folders(place: Path) -> list[Path]:
    """The folders right in that place that hold exported records, newest first."""
    try:
        inside = [folder for folder in place.iterdir() if _is_exported(folder)]
    except OSError:
        return []
    return sorted(inside, key=lambda folder: folder.name, reverse=True)


def tables_in(places: Sequence[Path]) -> list[Path]:
    """The CSV files right in these places, newest first."""
    found: list[tuple[float, Path]] = []
    for place in places:
        try:
            found += [
                (file.stat().st_mtime, file)
                for file in place.iterdir()
                if file.suffix.lower() == ".csv" and file.is_file()
            ]
        except OSError:
            continue
    return [file for _, file in sorted(found, reverse=True)]


def read_text(file: Path) -> str:
    """What a file says. ValueError, with a sentence, if it cannot be read as text."""
    try:
        return file.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        raise ValueError(say("teams.file.unreadable", name=file.name)) from error


def _is_exported(folder: Path) -> bool:
    return all((folder / name).is_file() for name in _TABLES)


def _mounted(root: Path, depth: int) -> Iterator[Path]:
    try:
        inside = sorted(folder for folder in root.iterdir() if folder.is_dir())
    except OSError:
        return
    for folder in inside:
        if os.path.ismount(folder):
            if os.access(folder, os.W_OK):
                yield folder
        elif depth > 1:
            yield from _mounted(folder, depth - 1)
