"""
A pack that somebody else published, read from its file: whole, of this format, and with numbers
that can be counted with, or refused with what to do.
"""

import json
from dataclasses import fields, is_dataclass
from math import isfinite
from pathlib import Path

from builder.files import read_within
from builder.pack import FORMAT, Pack
from builder.pack_json import from_json
from builder.reading.problems import Problem, Refused, Where

LARGEST_PACK = 64 * 1024 * 1024
OF_OLDER = (
    "ask the house to build its site again with this version, or run 'housepack pack' on its files;"
    " what is not exact, and what stands in one configuration alone, would be misread"
)


def read_pack(path: Path) -> Pack:
    """
    The pack that a file holds.

    Raises
    ------
    Refused
        If it is no pack of this format, or cannot be read.
    """
    raw = read_within(path, path.parent, path.name, LARGEST_PACK)
    try:
        text = raw.decode("utf-8-sig")
        pack = from_json(text)
    except ValueError:
        pack = None
    if pack is not None and is_whole(pack, text) and is_finite(pack):
        return pack
    reason, advice = why_no_pack(raw)
    raise Refused([Problem(Where(path.name), "", "", reason, "pack-unreadable", advice)])


def is_whole(pack: Pack, text: str) -> bool:
    """
    Whether a pack is of this format and holds rules. A format that is left out would be read as
    this one, and rules that are, as nothing that anybody may ask.
    """
    return pack.format == FORMAT and len(pack.rules) > 0 and "format" in json.loads(text)


def why_no_pack(raw: bytes) -> tuple[str, str]:
    """Why a file is no pack that this version reads, and how to go on."""
    try:
        read = json.loads(raw.decode("utf-8-sig"))
    except (ValueError, RecursionError):
        read = None
    record = read if isinstance(read, dict) else {}
    told = record.get("format")
    if isinstance(told, int) and not isinstance(told, bool) and told != FORMAT:
        return (
            f"is of format {told}, and this version reads format {FORMAT}",
            OF_OLDER if told < FORMAT else "read it with a newer version of housepack",
        )
    if told == FORMAT and "caution" in record:
        return "is what a page reads of a pack", "give the pack.json that stands beside it"
    if "sections" in record and ("format" not in record or not record.get("rules")):
        return (
            "does not say of which format it is, or what may be asked of it",
            "give the pack.json as it was published: something was taken out of this one",
        )
    return (
        "is not a pack that this version reads",
        "give the pack.json of a site, or what 'housepack pack' writes",
    )


def is_finite(value: object) -> bool:
    """Whether every number within a record is one that can be counted with."""
    if isinstance(value, float):
        return isfinite(value)
    if isinstance(value, tuple):
        return all(map(is_finite, value))
    if is_dataclass(value):
        return all(is_finite(getattr(value, part.name)) for part in fields(value))
    return True
