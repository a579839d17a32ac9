"""
Figures at both ends of what is known in part.

Most formulas take one number. Where a value has two ends, the departments compute with each end,
and a figure lies between what they give. That holds for values which move a figure one way only:
``one_way.py`` lists them, and a law tries every one of them against values in between. A room that
works with ends by itself, as rigging does with weights, is left as it is.
"""
