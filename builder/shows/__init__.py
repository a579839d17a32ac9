"""
Shows on the books: the riders that a house keeps in ``shows/``, judged day by day against a pack.

They are private. Nothing here is part of a pack, a page or a log; only a terminal tells of them. No
room that publishes may import this one, and this one opens no file.
"""
