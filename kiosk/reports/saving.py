"""Saving sheets where a person looks for them; a file that is there already is never touched."""

from __future__ import annotations

import errno
import os
from itertools import count
from pathlib import Path

from platformdirs import user_documents_path

from kiosk.texts import say

_FULL = (errno.ENOSPC, errno.EDQUOT)
_NOT_ALLOWED = (errno.EACCES, errno.EPERM, errno.EROFS)
_NO_FOLDER = (errno.EEXIST, errno.ENOTDIR)


class PaperError(Exception):
    """A sheet was not saved; the text says why, and what to do."""


def papers_folder() -> Path:
    """Where sheets go: a folder among the user's documents. It need not exist."""
    return user_documents_path() / "Gramstand"


def save_pdf(data: bytes, folder: Path, name: str) -> Path:
    """Save as ``name``.pdf, or as ``name`` (2).pdf and so on if that is taken; where it is now.

    The folder is made if need be. PaperError if it cannot be done; then nothing is left behind.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise _in_plain_words(error, folder) from error
    for turn in count(1):
        target = folder / (f"{name}.pdf" if turn == 1 else f"{name} ({turn}).pdf")
        try:
            _write(target, data)
        except FileExistsError:
            continue
        except OSError as error:
            raise _in_plain_words(error, target) from error
        return target
    raise AssertionError("numbers have no end")


def _write(target: Path, data: bytes) -> None:
    with target.open("xb") as file:
        try:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        except BaseException:
            file.close()
            target.unlink(missing_ok=True)
            raise


def _in_plain_words(error: OSError, where: Path) -> PaperError:
    if error.errno in _FULL:
        return PaperError(say("paper.save.full", where=where))
    if error.errno in _NOT_ALLOWED:
        return PaperError(say("paper.save.not_allowed", where=where))
    if error.errno in _NO_FOLDER:
        return PaperError(say("paper.save.no_folder", where=where))
    return PaperError(say("paper.save.failed", where=where, why=error.strerror or error))
