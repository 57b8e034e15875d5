"""Texts: the command line."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "listen.help": "print every frame of a balance as it comes",
    "listen.scale": "where the balance is: a serial port, socket://host:port, or simulated",
    "listen.dialect": "the language the balance speaks (sma unless said)",
    "listen.port_settings": "speed, data bits, parity and stop bits (9600-8N1 unless said)",
    "listen.readings": "end after so many frames",
    "listen.readings.bad": "{text!r} is no number of frames; give a whole number from 1 upward",
    "listen.seconds": "end after so many seconds",
    "listen.seconds.bad": "{text!r} is no time; give seconds, more than 0",
    "listen.mass": "{value} {unit}",
    "listen.still": "still",
    "listen.moving": "moving",
    "listen.unsaid": "still or moving, not said",
    "listen.no_mass": "no mass: {reason}",
    "listen.lost": "lost: {why}",
    "listen.lost.detail": "The balance cannot be reached: {detail}",
    "listen.back": "back: {where}",
}
