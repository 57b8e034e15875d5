"""Gramstand: a touch-screen station for a classroom table that listens to a balance."""
