"""Risers of wanted sizes, from the pieces that the house has."""
