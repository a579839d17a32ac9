"""
Does this show fit this house: published facts and a show's requirements in, verdicts out.

Begin at ``interpreter.py``, which judges a show in each arrangement of the house (``arrangements``)
and tells the best. ``requirements.py`` judges each requirement in the room of its subject
(``needs``, ``power``, ``hangs``, ``plots``, ``levels``, ``way_in``), ``whole_day.py`` what the acts
of a day come to together (``clock``); ``records.py`` has the shapes of what goes in and comes out,
and each subject has a table of its sentences.

All of it but ``published.py`` keeps to the part of Python that ``compiling/`` translates exactly:
typed records, text and floats; where a verdict hangs on a number only + - * / and a stated
tolerance; numbers in words by integer arithmetic; a stated order. It imports only itself,
``rules.py`` and ``formulas/``.
"""
