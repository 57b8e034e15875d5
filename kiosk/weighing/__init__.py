"""Readings over time: settling, pan events, tare."""
