"""Whether dimmers hang on what feeds a load."""

from builder.fit.power.sentences import ASK_OF_DIMMERS, SHARES
from builder.fit.power.tree import Tree, way_up
from builder.fit.records import Item, Section
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import text_of


def has_dimmers(item: Item) -> bool:
    """Whether the house says that dimmers hang on it."""
    return text_of(item, "dimmers") == "yes"


def may_have_dimmers(item: Item) -> bool:
    """Whether the house says that it does not know whether dimmers hang on it."""
    return "dimmers" in item["values"] and item["values"]["dimmers"]["standing"] == "unknown"


def may_be_dimmed(path: list[str], tree: Tree) -> bool:
    """Whether dimmers may hang on anything on a way up, for nobody knows."""
    return any(may_have_dimmers(tree[name]["item"]) for name in path)


def is_dimmed(path: list[str], tree: Tree) -> bool:
    """Whether dimmers hang on anything on a way up."""
    return any(has_dimmers(tree[name]["item"]) for name in path)


def dimmers_beside(path: list[str], section: Section, tree: Tree) -> str:
    """Which service with dimmers on it shares something on this way up, as far as the pack says."""
    for service in items_of(section, "service"):
        if has_dimmers(service):
            shared = [name for name in way_up(service["name"], tree) if name in path]
            if len(shared) > 0:
                return fill(SHARES, {"shared": shared[0], "service": service["name"]})
    return ASK_OF_DIMMERS
