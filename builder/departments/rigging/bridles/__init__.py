"""Bridles that stand, and spots that points make by legs."""
