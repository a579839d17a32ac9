"""
The contents of the project's documentation: each file's keys in the menu, as ``mkdocs.yml`` asks by
``keys/``.

A hook of the site generator, so that a new group of keys needs no line there.
"""

from typing import Any

from builder.explaining.addresses import FOLDER, INDEX
from builder.explaining.pages import contents

PLACEHOLDER = f"{FOLDER}/"


def on_config(config: Any) -> Any:
    """Put the pages of keys in the place of the placeholder."""
    config.nav = [filled(entry) for entry in config.nav]
    return config


def filled(entry: Any) -> Any:
    """An entry of the menu with the pages of keys where it asks for them."""
    if isinstance(entry, list):
        return [filled(part) for part in entry]
    if isinstance(entry, dict):
        return {title: filled(part) for title, part in entry.items()}
    return pages_of_keys() if entry == PLACEHOLDER else entry


def pages_of_keys() -> list[Any]:
    """The pages of keys, the first by itself, the others under their file."""
    files = [
        {file: [{title: f"{FOLDER}/{page}.md"} for title, page in pages.items()]}
        for file, pages in contents().items()
    ]
    return [f"{FOLDER}/{INDEX}.md", *files]
