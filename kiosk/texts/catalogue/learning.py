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
    "teach.name": "Scale {number}",
    "teach.strip": "new kind",
    "teach.step.1": "Step 1 of 3: empty",
    "teach.step.2": "Step 2 of 3: on and off",
    "teach.step.3": "Step 3 of 3: keep",
    "teach.title.empty": "Leave the pan empty.",
    "teach.title.put_on": "Put a cup on the pan.",
    "teach.title.once_more": "Put a cup on once more.",
    "teach.title.take_off": "Now take it off.",
    "teach.title.naming": "Keep it as {name}?",
    "teach.title.kept": "This scale is {name} now.",
    "teach.pan.not_yet": "listening",
    "teach.pan.we_read": "we read",
    "teach.pan.right": "is that right?",
    "teach.part.number": "number",
    "teach.part.unit": "unit",
    "teach.part.still": "still",
    "teach.part.moving": "moving",
    "teach.no_mark": "no mark",
    "teach.step_found": "[b]step {step}[/b], {sure} sure",
    "teach.progress": "on and off {number} of {goal}",
    "teach.now": "now",
    "teach.ago": "{seconds} s ago",
    "teach.nothing": "Nothing has come yet.",
    "teach.wait.empty": "Listening",
    "teach.wait.on": "Waiting for the cup",
    "teach.wait.off": "Waiting for the empty pan",
    "teach.wait.plug": "Waiting for the scale",
    "teach.again": "Do it once more",
    "teach.more": "Once\nmore",
    "teach.right": "That is\nright",
    "teach.keep": "Keep {name}",
    "teach.use": "Use it",
    "teach.start_over": "Start over",
    "teach.not_kept": "It could not be written down: {why}. Make room for it, then keep it again.",
    "teach.lost.title": "The scale is not heard.",
    "teach.lost.plug": "Put its cable back in. Then it begins again with the empty pan.",
    "teach.lost.why": "The cable cannot be used: {why}. It is tried again each second.",
    "teach.refused.silent.title": "Nothing comes.",
    "teach.refused.silent": (
        "Switch the scale on, and set it to send by itself (often called continuous). "
        "It goes on as soon as something comes."
    ),
    "teach.refused.no_lines.title": "This cannot be read.",
    "teach.refused.no_lines": (
        "What comes is no text, or too little. Set the scale to send text by itself, "
        "then start over."
    ),
    "teach.refused.two_fields.title": "Two numbers follow the cup.",
    "teach.refused.two_fields": (
        "Nobody can tell which is the mass. Set the scale to send one number only, without tare "
        "or pieces. Then do it once more."
    ),
    "teach.refused.no_unit.title": "No unit is sent.",
    "teach.refused.no_unit": (
        "The number may be grams or anything else. Set the scale to grams, and to send the unit. "
        "Then do it once more."
    ),
    "teach.refused.unclear.title": "The lines are too different.",
    "teach.refused.unclear": ("Set the scale to send one kind of line only. Then do it once more."),
    "teach.advice.never_changed": (
        "No number follows yet. Put something heavier on, wait until the scale is still, "
        "then take it off."
    ),
    "teach.advice.not_returned": (
        "The number has not come back yet. Take everything off the pan, and leave it empty."
    ),
}
