"""A balance that is not there, behind a port that is."""
