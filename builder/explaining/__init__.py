"""
A problem, a finding or a key in words: what a crew may ask of the program itself.

The words are those of the guides and of the descriptions, so that nothing is told twice.
"""
