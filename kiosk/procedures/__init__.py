"""Guided procedures as transition tables."""
