"""
A house of several stages: a show is judged in each space as a whole, as in a house of one stage.

The rules know nothing of it: they are given the pack of one space.
"""
