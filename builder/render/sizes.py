"""
How large a picture is, read from its own bytes, so that a page keeps its place before the picture
is there.
"""

import re

PNG = b"\x89PNG\r\n\x1a\n"
JPEG = b"\xff\xd8"
# The frame headers of JPEG, ISO/IEC 10918-1, table B.1: all of C0 to CF but the tables C4, C8 and
# CC.
FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}
VIEW_BOX = re.compile(rb'<svg[^>]*\bviewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"')
POINTS = re.compile(rb'<svg[^>]*\bwidth="[\d.]+pt"')
PIXELS_PER_POINT = 96 / 72
HEAD = 4000

Size = tuple[int, int]


def size_of(content: bytes) -> Size | None:
    """Width and height in pixels, for SVG those of its box; None where the bytes do not tell."""
    if content.startswith(PNG):
        return int.from_bytes(content[16:20]), int.from_bytes(content[20:24])
    if content.startswith(JPEG):
        return jpeg_size(content)
    found = VIEW_BOX.search(content[:HEAD])
    scale = PIXELS_PER_POINT if POINTS.search(content[:HEAD]) else 1
    return (round(float(found[1]) * scale), round(float(found[2]) * scale)) if found else None


def jpeg_size(content: bytes) -> Size | None:
    """
    The size in the first frame header: marker, two bytes of length, one of precision, height,
    width.
    """
    at = len(JPEG)
    while at + 9 <= len(content) and content[at] == 0xFF:
        if content[at + 1] in FRAMES:
            return int.from_bytes(content[at + 7 : at + 9]), int.from_bytes(
                content[at + 5 : at + 7]
            )
        at += 2 + int.from_bytes(content[at + 2 : at + 4])
    return None
