"""
The one place where a text becomes part of a key, an id, an address or the name of a file.

Whatever was written, what leaves here is small ASCII letters, digits and hyphens, and never empty.
"""

import re
import unicodedata
from collections.abc import Collection, Iterable
from hashlib import sha256

LONGEST = 100
KEPT = 80
"""Of a longer text so much stays readable; a hash behind it tells it from its neighbours."""
HASHED = 8


def address(text: str) -> str:
    """
    A text as an address: letters without their accents, others by their number; signs and blanks
    become hyphens.

    Texts that differ in no more than case, accents and signs have one address: to a reader they are
    the same. A text of signs alone is told by the numbers of the signs.
    """
    letters = (
        char
        for char in unicodedata.normalize("NFKD", plain_letters(text).casefold())
        if not unicodedata.combining(char)
    )
    joined = hyphenated("".join(addressed(char) for char in letters))
    found = joined or hyphenated("".join(numbered(char) for char in text)) or "none"
    if len(found) <= LONGEST:
        return found
    return f"{found[:KEPT].rstrip('-')}-{sha256(found.encode()).hexdigest()[:HASHED]}"


def plain_letters(text: str) -> str:
    """The text with letters of another style, such as capitals in script, as plain ones."""
    return unicodedata.normalize("NFKD", text)


def distinct(texts: Iterable[str]) -> list[str]:
    """An address for each text, no two the same: of texts alike, the first keeps the plain one."""
    found: list[str] = []
    for text in texts:
        found.append(free(address(text), set(found)))
    return found


def free(wanted: str, taken: Collection[str]) -> str:
    """An address that is not taken: the one wanted, or the same with the next number behind it."""
    found, count = wanted, 1
    while found in taken:
        count += 1
        found = f"{wanted}-{count}"
    return found


def file_address(name: str) -> str:
    """
    The name of a file in the site, from the name that it has in the venue's folder: a plain one
    stays, any other is told from its neighbours by a hash.
    """
    if PLAIN_FILE.fullmatch(name):
        return name
    stem, _, ending = name.rpartition(".")
    mark = sha256(name.encode("utf-8", "surrogatepass")).hexdigest()[:HASHED]
    return f"{address(stem)}-{mark}.{address(ending)}"


PLAIN_FILE = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]{0,99}(\.[A-Za-z0-9]{1,8})")


def addressed(char: str) -> str:
    """One character of an address."""
    if not char.isalnum():
        return "-"
    return char if char.isascii() else numbered(char)


def numbered(char: str) -> str:
    """A character by its number."""
    return f"-{ord(char):x}-"


def hyphenated(text: str) -> str:
    """A text whose parts are joined by single hyphens."""
    return re.sub("-+", "-", text).strip("-")
