"""Texts: recordings and their replay."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "replay.help": "run a recording through settling and print what happened on the pan",
    "replay.file": "a recording (JSON Lines)",
    "replay.dialect": "the wire format, if it is not the one that the recording names",
    "recording.unreadable": "{file} cannot be read: {why}",
    "recording.no_text": "{file} is no recording: it is not a text file in UTF-8",
    "recording.empty": "{file} is empty: a recording begins with a line that names its dialect",
    "recording.bad_line": "{file}, line {line}: {why}",
    "recording.not_json": "this is no line of a recording; is it the right file?",
    "recording.option": "record what the balance sends into a new file, for gramstand replay",
    "recording.there": "{file} is there already: name a new file for the recording",
    "recording.unwritable": "{file} cannot be written: {why}",
    "recording.ended": "The recording {file} ends here: {why}. Weighing goes on.",
    "recording.backwards": "{file}, line {line}: its time lies before that of the line above",
}
