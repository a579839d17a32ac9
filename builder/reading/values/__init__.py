"""
What one value says, read from its text: numbers, amounts with their units, positions, times, days,
yes and no, choices.

The house's descriptions and riders are read by the same functions, and riders in the browser too,
so this is written in the subset of Python that becomes the page's script: records for objects, and
a reason in place of an exception.
"""
