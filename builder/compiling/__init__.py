"""
The check's rules, written once in Python, as a script for the browser.

The rooms that judge a show are written in a small part of Python: functions, typed records, lists,
mappings, and no classes. :func:`builder.compiling.program.compiled` turns them into JavaScript of
the same meaning, and refuses, with file and line, whatever it cannot translate exactly. Begin
reading there. ``DEVELOPERS.md`` lists what the part holds.
"""
