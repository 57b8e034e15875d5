"""One screen a step; screens only bind."""
