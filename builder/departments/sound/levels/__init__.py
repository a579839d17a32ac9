"""Levels against limits, outside the house, and by the makers' figures."""
