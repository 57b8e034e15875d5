"""Texts of records that travel by file."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "hub.files": "Files",
    "files.what_for": "kiosks without a network",
    "files.title": "Where do the records go, or come from?",
    "files.how": (
        "Write them to a stick here, take them in on the other kiosk. Nothing is written over."
    ),
    "files.working": "Working. Leave the stick where it is.",
    "files.write": "Write all",
    "files.write.where": "Where to?",
    "files.take_in": "Take in",
    "files.take_in.where": "Which records are taken in?",
    "files.nothing": "None found. Plug the stick in, wait a moment, then come back here.",
    "files.folder": "Gramstand {at}",
    "files.written": ("{count} row is written.", "{count} rows are written."),
    "files.taken_in": ("{count} row is new here.", "{count} rows are new here."),
    "files.conflict.both": "{what}: here {here}, there {there}.",
    "files.conflict.stands": "What is here stands. Look at the paper, then correct it if need be.",
    "files.conflict.step.stands": (
        "It was decided there without all that is noted here. See the results, then decide here."
    ),
    "files.conflict.stage.open": "open",
    "files.conflict.stage.locked": "locked",
    "files.conflict.stage.released": "released",
    "files.conflict.stage.final": "final",
    "files.conflict.other": "A row of {table} does not fit what is here.",
    "files.conflict.answer": "{team}, {task}",
    "files.conflict.cup": "Cup of {team}",
    "files.conflict.team": "Team {team}",
    "files.conflict.round": "The rules",
    "files.conflict.key": "A key",
    "files.conflict.clock": "A clock",
    "files.conflict.step": "How far the results are",
    "files.conflict.protest": "A protest",
    "files.conflict.list": "A kept list",
    "files.conflict.nothing": "nothing",
    "files.conflict.unreadable": "cannot be read",
    "files.conflict.blank": "blank",
    "files.conflict.changed": "something else",
    "files.conflict.turn.empty": "weighed empty",
    "files.conflict.turn.filled": "handed in",
    "files.conflict.turn.spilled_before": "spilled before it was handed in",
    "files.conflict.turn.spilled_after": "spilled after it was handed in",
    "files.conflict.turn.cracked": "cracked",
    "files.conflict.turn.set_aside": "set aside",
    "files.conflict.turn.late": "late",
    "files.conflict.turn.not_handed_in": "not handed in",
    "files.conflict.turn.undone": "taken back",
}
