"""
The site room: hands the pages to the generator, holds the theme, builds and serves.

The only room that knows the generator.
"""
