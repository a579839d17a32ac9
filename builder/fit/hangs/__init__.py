"""
Hang plans: which point carries each support, what hangs under which limit, and how high it goes.

Begin at ``plan``.
"""
