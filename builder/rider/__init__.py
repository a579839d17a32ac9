"""
What a visiting show asks: read from its rider file, checked against the rules, and turned into
plain records for the fit room.
"""
