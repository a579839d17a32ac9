"""
Stage plots: each rectangle on its floor, what is in its way, and what would mend it.

Begin at ``stage_plot``.
"""
