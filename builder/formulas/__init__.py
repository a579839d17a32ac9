"""
Physics and arithmetic: numbers in, numbers out, no venue in sight.

Start at ``cite.py``, then any one formula.
"""
