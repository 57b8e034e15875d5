"""Ways for bytes to travel."""
