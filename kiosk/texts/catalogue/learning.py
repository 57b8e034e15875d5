"""Texts: learning how an unknown balance writes its lines, and keeping what was learned."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "learn.help": "learn how a balance writes its lines while a load is put on and taken off",
    "learn.scale": "where the balance is: a serial port or socket://host:port",
    "learn.port_settings": (
        "speed, data bits, parity and stop bits (found by listening unless given)"
    ),
    "learn.seconds": "listen for so many seconds",
    "learn.save": "the name under which --dialect will know the balance",
    "learn.begin": (
        "Leave the pan empty for a moment, put something on, wait until it rests, take it off "
        "again: {seconds} s from now."
    ),
    "learn.done": (
        "{name}: {unit} in steps of {readability}; at rest: {stable}; moving: {moving}; "
        "{confidence} sure. Use it with --dialect {option}"
    ),
    "learn.no_mark": "no mark",
    "learn.refused": "Not learned. {why}",
    "learn.refused.silent": (
        "Not a byte came. Switch the balance on and set its output to send by itself "
        "(continuous), then try again."
    ),
    "learn.refused.no_lines": (
        "What came is no lines of text. Set the balance to send text by itself, or give its "
        "--port-settings, then try again."
    ),
    "learn.refused.never_changed": (
        "No number followed a load. Leave the pan empty, put something heavier on, wait, take it "
        "off again; and give it more seconds."
    ),
    "learn.refused.not_returned": (
        "A number changed but did not come back. Put something on and take it off again, and wait "
        "with the pan empty before and after."
    ),
    "learn.refused.two_fields": (
        "More than one number follows the load. Set the balance to send one mass only, without "
        "tare, pieces or a second unit."
    ),
    "learn.refused.no_unit": (
        "No unit of mass was seen beside the number. Set the balance to weigh in grams and to send "
        "the unit."
    ),
    "learn.refused.unclear": (
        "The lines differ too much from one another. Set the balance to send one kind of line, "
        "then try again."
    ),
    "learn.refused.simulated": (
        "The simulated balance sends nothing by itself and needs no learning: its dialect is sma."
    ),
    "learn.refused.hid": (
        "A HID scale sends no lines and needs no learning: its dialect is hid-scale."
    ),
    "learn.refused.port": "The balance cannot be heard: {why}. Look at its cable, then try again.",
    "learn.refused.folder": "What was learned cannot be kept in {folder}: {why}.",
    "shape.bad_name": (
        "{name} cannot be a name: use up to 40 letters, digits, spaces, dots, hyphens and "
        "underscores, beginning with a letter or a digit."
    ),
    "shape.taken": "{name} is the name of a dialect already: choose another.",
    "shape.broken": (
        "What was learned of {name} cannot be used ({file}: {why}). Learn it once more."
    ),
}
