"""
In which arrangement of the house a show plays: every need of it is judged in the same one.

The rules know nothing of it: they are given a pack that holds what stands in one arrangement.
"""
