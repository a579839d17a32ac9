"""
housepack: a venue description becomes a checked, computed, searchable tech pack.

One figure, from a crew's line to a show's verdict. Read these in turn:

1. ``venue/access.yml``: ``passages:`` of a route, ``{name: Fire door, width: 2.1 m, ...}``.
2. ``reading/``: the text becomes a :class:`~builder.departments.access.description.Passage`, its
   width a ``Length`` in metres that keeps the author's wording; a mistake becomes a ``Problem``
   with its line.
3. ``departments/access/figures.py``, ``route_figures``: the route's tightest width, by
4. ``formulas/route.py``, ``tightest``: numbers in, numbers out, with its citation.
5. ``pack.py``: the ``Figure`` with its ``Working``; it is in ``pack.json`` as it stands.
6. ``departments/access/page.py``, ``route_blocks``: the opening in large, as blocks; ``render/``
   makes Markdown of them, ``site/`` pages.
7. ``fit/published.py`` takes the figure out of the pack; ``fit/way_in/``, ``trucks_get_in``, holds
   a show's largest case against it and says by how much it passes, in the terminal and, compiled
   by ``compiling/``, in the browser.

``pipeline.py`` is the same road as code.
"""
