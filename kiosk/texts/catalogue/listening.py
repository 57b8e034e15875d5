"""Texts: listening to a balance on the command line."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "listen.help": "print every frame of a balance as it comes",
    "listen.scale": (
        "where the balance is: a serial port, hid:..., socket://host:port, simulated, "
        "or auto for the only USB scale there is"
    ),
    "listen.dialect": (
        "the language the balance speaks (unless given: hid-scale at hid:..., else sma)"
    ),
    "listen.port_settings": "speed, data bits, parity and stop bits (9600-8N1 unless given)",
    "listen.readings": "end after so many frames",
    "listen.readings.bad": "{text} is no number of frames: give a whole number above zero",
    "listen.seconds": "end after so many seconds",
    "listen.seconds.bad": "{text} is no time: give seconds, above zero",
    "listen.mass": "{value} {unit}",
    "listen.still": "still",
    "listen.moving": "moving",
    "listen.unsaid": "still or moving, not said",
    "listen.no_mass": "no mass: {reason}",
    "listen.lost": "lost: {why}",
    "listen.lost.detail": "The balance cannot be reached: {detail}",
    "listen.back": "back: {where}",
}
