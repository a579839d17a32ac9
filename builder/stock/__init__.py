"""
Stock: change what the house owns in the crew's own files, and see what that does to the pack.

``spots`` finds where a value stands, ``edits`` changes the text there and nothing else, ``lines``
finds a line by its name, ``orders`` turns an order such as 'one out' into edits, ``changing``
applies them to a venue with a line in its log, ``comparison`` tells two packs apart.
"""
