"""The arithmetic of the event: scores, keys and their uncertainty."""
