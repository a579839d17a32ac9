"""
What a thing of a pack stands on, hangs from, is fed from or passes, and what that makes of its
state and its terms: it is no better than what bears it.

The facts themselves stay as their lines tell them. The check of a show and the pages read this
beside them.
"""
