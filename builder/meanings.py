"""
What each key of a description means: the docstring that stands under its field.

Only the guides, the schemas and ``housepack explain`` ask, so they read the source for it, and no
other command pays for that.
"""

import ast
import inspect
from collections.abc import Iterator, Mapping
from functools import cache
from textwrap import dedent

from builder.reading.written import Written


@cache
def meanings_of(record: type[Written]) -> Mapping[str, str]:
    """
    What each field of a record means, by the field's name and on one line. A record's own text
    stands for that of the record it is derived from.
    """
    found: dict[str, str] = {}
    for kind in reversed(record.__mro__):
        if issubclass(kind, Written) and kind is not Written:
            found |= own_texts(kind)
    return found


def own_texts(kind: type[Written]) -> dict[str, str]:
    """The texts that stand under the fields of one class, as its source has them."""
    defined = ast.parse(dedent(inspect.getsource(kind))).body[0]
    return dict(texts_under_fields(defined)) if isinstance(defined, ast.ClassDef) else {}


def texts_under_fields(defined: ast.ClassDef) -> Iterator[tuple[str, str]]:
    """Each field that a text stands under, and the text."""
    for field, under in zip(defined.body, defined.body[1:], strict=False):
        if not isinstance(field, ast.AnnAssign) or not isinstance(field.target, ast.Name):
            continue
        if isinstance(under, ast.Expr) and isinstance(under.value, ast.Constant):
            yield field.target.id, " ".join(str(under.value.value).split())
