"""
What a value is: the compiler's own view of types, as much as it needs to translate exactly.

mypy has checked the same source, so nothing is proven here twice. A kind only tells which of
JavaScript's operators means the same as Python's.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Kind:
    """
    A kind of value: ``int``, ``list`` of something, ``record`` of a name, ``either`` of several.

    ``parts`` are the kinds within: of a list its element, of a tuple each place, of a map key and
    value, of a function its parameters and, last, what it returns.
    """

    name: str
    parts: tuple["Kind", ...] = ()
    record: str = ""

    def __str__(self) -> str:
        inner = ", ".join(str(part) for part in self.parts)
        return self.record or (f"{self.name}[{inner}]" if inner else self.name)


BOOL = Kind("bool")
INT = Kind("int")
FLOAT = Kind("float")
TEXT = Kind("text")
NONE = Kind("none")
NEVER = Kind("never")
"""The element of a list that is still empty."""


def list_of(element: Kind) -> Kind:
    """A list, or a tuple of any length."""
    return Kind("list", (element,))


def tuple_of(*places: Kind) -> Kind:
    """A tuple of so many places."""
    return Kind("tuple", places)


def map_of(key: Kind, value: Kind) -> Kind:
    """A mapping."""
    return Kind("map", (key, value))


def record_of(name: str) -> Kind:
    """A typed record, by the full name of its class."""
    return Kind("record", (), name)


def joined(*kinds: Kind) -> Kind:
    """The kind of what is one of these: a number if all are numbers, else ``either``."""
    flat: list[Kind] = []
    for kind in kinds:
        for part in kind.parts if kind.name == "either" else (kind,):
            if part not in flat:
                flat.append(part)
    flat = without_open_lists(flat)
    if len(flat) > 1 and all(part.name in ("int", "float") for part in flat):
        return FLOAT
    return flat[0] if len(flat) == 1 else Kind("either", tuple(flat))


def without_open_lists(kinds: list[Kind]) -> list[Kind]:
    """The kinds without those of empty lists and mappings that another one fills."""
    kept = [kind for kind in kinds if kind != NEVER]
    filled = {kind.name for kind in kept if NEVER not in kind.parts}
    return [kind for kind in kept if NEVER not in kind.parts or kind.name not in filled] or kinds[
        :1
    ]


def certain(kind: Kind) -> Kind:
    """The kind without None: mypy has seen to it that None does not come here."""
    if kind.name != "either":
        return kind
    return joined(*(part for part in kind.parts if part != NONE))


def choices(kind: Kind) -> tuple[Kind, ...]:
    """Every kind that a value may be."""
    return kind.parts if kind.name == "either" else (kind,)


def is_number(kind: Kind) -> bool:
    """Whether it is a whole number or a float."""
    return certain(kind).name in ("int", "float")


def is_plain(kind: Kind) -> bool:
    """Whether equality of two such values is JavaScript's ``===``."""
    return all(part.name in ("bool", "int", "float", "text", "none") for part in choices(kind))
