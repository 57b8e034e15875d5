"""Wire formats by name."""
