"""
housepack: a venue description becomes a checked, computed, searchable tech pack.

Begin reading at ``pipeline.py``: text, venue, pack, pages.
"""
