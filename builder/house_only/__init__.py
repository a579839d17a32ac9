"""
What is for the house only: counted in everything, told in nothing that is published.

``sealing.py`` gives such lines a name that says nothing, and takes their words out, before anything
is computed: what never knew a name cannot tell it. ``withholding.py`` then takes the lines
themselves out of the pack. ``logged.py`` does the same with the log, and ``naming.py`` finds public
words that name such a line.
"""
