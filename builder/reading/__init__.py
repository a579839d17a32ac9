"""
Reading: YAML text to checked, frozen descriptions with a position for every node.

``problems.py`` says what can be wrong with a text, ``nodes.py`` composes YAML, ``quantities.py``
reads numbers with units, ``written.py`` is the base of every description, ``reader.py`` joins them,
``references.py`` and ``review.py`` look over the whole.
"""
