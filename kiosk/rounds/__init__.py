"""Rounds: what a round's notes add up to, and what follows from it."""
