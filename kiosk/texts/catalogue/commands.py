"""Texts: the command line, and what is typed."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    # Numbers that a person types
    "typed.blank": "{name} is blank: type a number such as 93.4.",
    "typed.not_a_number": "{name} is not a number: {text}. Use digits and a point, as in 93.4.",
    "typed.too_long": "{name} has more than {limit} characters: type fewer.",
    "typed.not_whole": "{name} must be a whole number above zero, not {text}.",
    "typed.not_positive": "{name} must be above zero, not {text}.",
    "typed.not_percent": "{name} must be above 0 and at most 100, not {text}.",
    # Every command
    "command.list": "commands (gramstand COMMAND --help tells more):",
    "command.json": "print one JSON object a line and nothing else",
    "command.unknown": "there is no command {name}; there are {commands}",
    # gramstand score
    "command.score.help": "score one estimate against the actual value",
    "command.score.actual": "the actual value, above zero",
    "command.score.estimate": "the estimate, zero or above, in the same unit",
    "command.name.actual": "The actual value",
    "command.name.estimate": "The estimate",
    "command.score.under": "{points} points, {error} under.",
    "command.score.over": "{points} points, {error} over.",
    "command.score.double": "{points} points, double the actual value or more.",
    "command.score.exact": "{points} points, exactly right.",
    "score.actual_not_positive": "The actual value must be above zero.",
    "score.estimate_negative": "An estimate cannot be below zero.",
    # gramstand count-key
    "command.count_key.help": "count the pieces in a container by weight, with a 95 % interval",
    "command.count_key.pieces": "pieces in each counted sample",
    "command.count_key.sample": "net mass of one sample in grams; once for each, all from one tray",
    "command.count_key.filled": "gross mass of the filled container in grams",
    "command.count_key.empty": "gross mass of the empty container in grams (0 unless given)",
    "command.count_key.readability": "the step of the balance in grams (else from the digits)",
    "command.count_key.piece_cv": (
        "how much single pieces differ, one standard deviation in per cent, if it is known"
    ),
    "command.count_key.from_container": "the counted pieces are in the weighed fill",
    "command.count_key.table": (
        "a CSV file with one jar a row: jar, pieces, readability, empty, filled, sample_1, ..."
    ),
    "command.count_key.needs": "needs {options}, or --table FILE.csv",
    "command.count_key.either": "{option} is a column of the table: leave one of them out",
    "command.name.pieces": "The number of pieces",
    "command.name.sample": "Sample {place}",
    "command.name.filled": "The filled mass",
    "command.name.empty": "The empty mass",
    "command.name.readability": "The readability",
    "command.name.piece_cv": "The scatter of pieces",
    "command.count_key.count": (
        "{count} pieces; 95 % sure: between {low} and {high} (good to {half})."
    ),
    "command.count_key.piece": (
        "One piece weighs {mass}. An answer worth 90 points may lose {points} points by it."
    ),
    "command.count_key.note": "Note: {text}",
    "command.count_key.row": "Jar {jar}: {text}",
    "table.unreadable": "{file} cannot be read: {why}",
    "table.not_text": "{file} is not a table in UTF-8: save it as CSV with UTF-8 and commas.",
    "table.no_header": "{file} is empty: its first line must name the columns.",
    "table.missing": "{file} lacks the column {columns}; its columns are separated by commas.",
    "table.unknown": "{file} has a column {columns} that means nothing here.",
    "table.twice": "{file} has the column {columns} more than once.",
    "table.too_many_cells": "This row has more cells than the table has columns.",
    "table.no_jar": "Row {row} does not name its jar.",
    # gramstand standings
    "standings.half_width": "The half width must be from 0 to under {limit} per cent.",
    "command.standings.help": "rank a round from two files, with the places that the keys allow",
    "command.standings.folder": "the folder with keys.csv and answers.csv",
    "command.standings.files": (
        "keys.csv: task,actual,half_width_percent, one row for each of {tasks}. "
        "answers.csv: team,task,estimate; what is missing or blank scores 0. "
        "The rules are those of this kiosk's settings."
    ),
    "command.standings.no_folder": (
        "There is no folder {folder}: name the one with keys.csv and answers.csv."
    ),
    "command.standings.nobody": "No team has answered.",
    "command.standings.place": "place",
    "command.standings.team": "team",
    "command.standings.total": "total",
    "command.standings.range": "95 % of draws",
    "command.standings.from_to": "{low} to {high}",
    "round.key_twice": "{task} has a key already: leave one of them out.",
    "round.no_key": "{file} has no key for {tasks}: each of the seven tasks needs one.",
    "round.no_team": "The team is blank: every answer needs the team that gave it.",
    "round.answer_twice": "{team} has answered {task} already: leave one of the two out.",
    "round.no_task": "There is no task {text}; there are {tasks}.",
    "round.name.half_width": "The half width",
    # gramstand export, backup, check
    "command.import.help": "take in the tables that another kiosk exported",
    "command.import.folder": "a folder that was exported; it is only read",
    "command.import.table": "{table}: {new}{differ}",
    "command.import.new": ("{count} new row", "{count} new rows"),
    "command.import.conflicts": (
        ", {count} row does not fit and was left out",
        ", {count} rows do not fit and were left out",
    ),
    "command.import.done": ("{count} new row in all", "{count} new rows in all"),
    "command.export.help": "write every table of the records as CSV",
    "command.export.folder": "where to; files that are there are never overwritten",
    "command.export.table": "{table}: {rows} in {file}",
    "command.export.rows": ("{count} row", "{count} rows"),
    "command.backup.help": "copy the records, also while a kiosk writes to them",
    "command.backup.file": "the copy; a file that is there is never overwritten",
    "command.backup.done": "The records are copied to {file}, and the copy is sound.",
    "command.check.help": "check that the records hold together",
    "command.check.epilog": (
        "Asked in this order, the next only if the one before is well: is the file sound, with "
        "its references, tables and guards; can every cell be read; are net masses filled less "
        "empty, do points come of them by some rule, are simulated masses apart from real ones, "
        "are numbers and letters taken just by what is out and counts. Nothing is changed."
    ),
    "command.check.sound": "The records hold together: {rows} in {tables} tables.",
    "command.check.rows": ("{count} row", "{count} rows"),
    "command.check.waiting": (
        "{count} capture of this kiosk is not yet stored; it waits in {file}.",
        "{count} captures of this kiosk are not yet stored; they wait in {file}.",
    ),
    "command.check.wrong": (
        "{count} thing is wrong. Make a backup, then ask for help.",
        "{count} things are wrong. Make a backup, then ask for help.",
    ),
    # Tables that must be just so
    "strict.line": "{file}, line {line}: {why}",
    "strict.empty": "{file} is empty: its first line must be {columns}.",
    "strict.header": "The first line must be {columns}, with commas, not {found}.",
    "strict.cells": "This row has {count} cells, not {wanted}.",
    "strict.missing": "There is no file {file}.",
    "strict.not_text": "{file} is not a table in UTF-8: save it as CSV with UTF-8 and commas.",
    "strict.unreadable": "{file} cannot be read: {why}.",
    "strict.no_csv": "This is no CSV: {why}. Quotes come in pairs, a quote inside is doubled.",
}
