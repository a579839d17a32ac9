"""Dates on which the house, or some departments of it, are closed to shows."""
