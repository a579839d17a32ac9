"""
From a rider's tree to what the check takes: every key read as the language of riders says, then
part by part to requirements in SI; what cannot be read is told with its place.

Terminal and page run the same: it is written in the subset of Python that becomes the page's
script. Begin at ``rider.py``. The language itself, its keys and kinds and choices, is data that
``builder/rider/table.py`` makes from the description.
"""
