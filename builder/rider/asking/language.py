"""The language of riders as data: which keys a group has, and how the value of each is read."""

from typing import Literal, TypedDict

from builder.rider.asking.ranges import Range


class KeyRule(TypedDict):
    """
    A key of a group.

    ``sort`` is how one value is read and ``many`` how many there are. ``of`` is the name of a kind
    of quantity or of a group; ``longest`` the most characters of words; ``choices`` what may be
    chosen; ``like`` an example; ``otherwise`` what is read where the key is not written, empty for
    nothing; ``range`` what a count or a quantity can be.
    """

    key: str
    needed: bool
    sort: Literal["words", "count", "yes", "day", "choice", "quantity", "group"]
    many: Literal["one", "two", "list"]
    of: str
    longest: int
    choices: list[str]
    like: str
    otherwise: str
    range: Range | None


class Language(TypedDict):
    """
    The keys of each group by the group's name, the name of the group at the top, and what the
    amount of a need can be, by the kind of its rule.
    """

    top: str
    groups: dict[str, list[KeyRule]]
    amounts: dict[str, Range]


def rule_of(keys: list[KeyRule], key: str) -> KeyRule | None:
    """The rule of a key, or None where a group has no such key."""
    for rule in keys:
        if rule["key"] == key:
            return rule
    return None


def keys_in_order(keys: list[KeyRule]) -> list[str]:
    """The keys of a group, those that must be there first."""
    needed = [rule["key"] for rule in keys if rule["needed"]]
    return needed + [rule["key"] for rule in keys if not rule["needed"]]
