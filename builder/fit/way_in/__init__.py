"""How trucks and the largest case come from the road to the deck."""
