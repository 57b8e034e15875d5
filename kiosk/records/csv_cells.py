"""Cells of a CSV file by RFC 4180, made harmless for programs that would calculate with them.

A spreadsheet takes a text that begins with = + - @ (or their wide forms), a tab or a line end for
a formula (OWASP, "CSV Injection"). Such a text gets an apostrophe in front, and so does one that
begins with an apostrophe, so that taking one off always gives back the text. Numbers are left as
they are: -0.3 is a mass.
"""

from __future__ import annotations

from collections.abc import Iterable

LINE_END = "\r\n"
_GUARD = "'"
_FORMULAS = frozenset("=+-@＝＋－＠\t\r\n\0")
_QUOTED = frozenset(',"\r\n')


def harmless(text: str) -> str:
    """``text`` as a spreadsheet shows it instead of calculating it."""
    begins = {text[:1], text.lstrip()[:1]}
    return _GUARD + text if begins & _FORMULAS or text.startswith(_GUARD) else text


def as_it_was(cell: str) -> str:
    """The text of which ``harmless`` made this cell."""
    return cell.removeprefix(_GUARD)


def line(cells: Iterable[str | None]) -> str:
    """One line with its end; None is a blank cell, and an empty text is a pair of quotes."""
    return ",".join(map(_cell, cells)) + LINE_END


def _cell(text: str | None) -> str:
    if text is None:
        return ""
    if text and not _QUOTED & set(text) and text == text.strip():
        return text
    return '"{}"'.format(text.replace('"', '""'))
