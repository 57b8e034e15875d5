"""Texts: when something cannot be written down."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "records.foreign": (
        "{where} is not a records file of Gramstand. Nothing in it was changed. "
        "Choose another file for the records."
    ),
    "records.newer": (
        "{where} was written by a newer Gramstand. Nothing in it was changed. "
        "Start the newer program, or choose another file for the records."
    ),
    "records.damaged": (
        "{where} is damaged. Nothing in it was changed. "
        "Put your last backup in its place, or move it away to begin with empty records."
    ),
    "records.not_writable": (
        "{where} cannot be written. See that its drive is plugged in and that you may write there, "
        "then try again, or choose another place for the records."
    ),
    "records.no_folder": (
        "There is no folder {where}. Make it, or choose another place for the records."
    ),
    "records.a_folder": ("{where} is a folder. Give the name of a file inside it for the records."),
    "records.full": "The disk with {where} is full. Make room on it, then try again.",
    "records.in_use": ("Another program holds {where}. Close that program, then try again."),
    "records.not_there": (
        "There are no records at {where}. Give the place that the kiosk was started with "
        "(--records)."
    ),
    "records.there_already": (
        "{where} is there already. Nothing was overwritten. Give another name, or move it away."
    ),
    "records.away": (
        "The records at {where} do not answer. See that the network and the server are there, "
        "then try again."
    ),
    "records.no_driver": (
        'Records on PostgreSQL need one more package: run pip install "psycopg[binary]", '
        "then start again."
    ),
    "records.bad_address": (
        "{where} is no place for records. Give the name of a file, or postgresql://... for a "
        "server."
    ),
    "records.number_taken": "Cup {number} is out already. Give this cup another number.",
    "records.all_out": (
        "All {count} cup numbers are out. Hand a cup in, or let the coach throw a try away."
    ),
    "records.not_out": (
        "This cup is not out any more: it was handed in or thrown away. Choose another cup."
    ),
    "records.no_try": "This try is not in the records. Weigh the empty cup first.",
    "records.letter_taken": "Jar {letter} has a key already. Choose another letter.",
    "records.box_taken": "Box {number} has a key already. Choose another number.",
    "records.key_closed": "This key is finished or was dropped. Begin a new key.",
    "records.no_key": "This key is not in the records. Begin a new key.",
    "records.no_masses": "This key has no masses behind it. Weigh the samples first.",
    "records.no_weighing": "This check has no weighing behind it. Check the scale again.",
    "records.mass_gone": "This mass is not in the records. Weigh it again.",
    "records.no_sizes": "This key has no sizes behind it. Measure the box first.",
    "records.size_gone": "This size is not in the records. Measure it again.",
    "records.gone_already": "This was taken back before. Nothing more needs to be done.",
    "records.no_round": "This round is not in the records. Open it again from the drawer.",
    "records.lost_race": (
        "Somebody else changed this a moment ago. Look at what it says now, then decide again."
    ),
    "records.round_frozen": (
        "A sitting has begun meanwhile: rules stay as they are, and another key needs two codes "
        "and a reason. Nothing was changed."
    ),
    "records.round_locked": (
        "The answers of this division are locked meanwhile. Nothing was changed. To change it, "
        "correct it in Results, or go a step back there."
    ),
    "records.round_final": (
        "The results of this division are final. Nothing was changed. To change something, go a "
        "step back in Results, for a reason."
    ),
    "records.mixed": (
        "This was begun on another kind of scale. Simulated masses never mix with real ones: "
        "begin again on this scale."
    ),
    "records.other_content": (
        "The records hold something else under the same name. Nothing was changed. Weigh it again."
    ),
    "records.conflict": (
        "This does not fit what is in the records by now, so it was not kept. "
        "Go back and look, then try again."
    ),
    "records.no_table": (
        "{where} is missing. Choose a folder that Gramstand exported, with all its tables."
    ),
    "records.other_table": (
        "{where} has other columns than this table. Take the folder as Gramstand exported it."
    ),
    "records.unreadable_table": (
        "Line {line} of {where} cannot be read. Take the file as Gramstand exported it."
    ),
    "records.closed": "The records are closed. Start Gramstand again, then weigh again.",
    "records.unexpected": (
        "The records could not do this ({detail}). Try again; if it stays so, "
        "write the mass on paper and tell the coach."
    ),
    "journal.refused": (
        "What was captured while the records were away could not be stored ({what}). {why}"
    ),
    "journal.no_mass": "no mass",
    "journal.cup": "cup of {team}",
    "journal.jar": "{team}, jar {letter}",
    "journal.box": "{team}, box {letter}",
    "journal.sheet": "sheet of {team}",
    "journal.clock": "clock of sitting {sitting}",
    "journal.note": "a note of a round",
    "journal.title": "Not stored.",
    "journal.stays": "Tell the coach. It stays in a file of this kiosk.",
    "journal.seen": "Go on",
    "strip.not_stored": ("{count} not yet stored", "{count} not yet stored"),
    # What gramstand check finds
    "check.file": "The file is not sound: {why}",
    "check.table": "The table {table} lacks {columns}.",
    "check.guard": "Rows of {table} could be changed: its guard against {verb} is gone.",
    "check.reference": "Row {row} of {table} refers to a row of {parent} that is not there.",
    "check.value": "Row {row} of {table} has something in {column} that cannot be read.",
    "check.net": "Cup {row}: {gross} g less {tare} g is not {net} g.",
    "check.points": "Cup {row}: {net} g for {target} g is not worth {points} points ({side}).",
    "check.mixed": "Row {row} of {table} mixes simulated with real masses.",
    "check.label": "The label {label} of a {what} is taken, or free, in spite of {row}.",
    "check.interval": "Key {row}: {count} pieces do not lie between {low} and {high}.",
    "check.volume": "Key {row}: {cm3} cm³ do not lie between {low} and {high}.",
}
