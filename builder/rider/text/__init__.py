"""
The part of YAML that riders use, read character by character: text in, a tree of nodes out, each
with its place.

Terminal and page read riders with it, so it is written in the subset of Python that becomes the
page's script. Begin at ``document.py``; ``blocks.py`` reads what indentation holds together,
``brackets.py`` what stands in `[ ]` and `{ }`, ``plain.py``, ``quoted.py`` and ``long_text.py`` the
ways to write one text. ``writing.py`` is the way back.
"""
