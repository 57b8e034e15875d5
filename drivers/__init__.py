"""Bytes, wire formats, ports and the simulated balance. Imports nothing by itself."""
