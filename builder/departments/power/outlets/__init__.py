"""Outlets: how many at once, where the next loads go, what plugs into what."""
