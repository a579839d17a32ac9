"""What the compiler does not translate: a sentence with file and line."""

import ast


class NotTranslatable(Exception):
    """A place in the source outside the part of Python that is translated."""

    def __init__(self, file: str, line: int, reason: str) -> None:
        super().__init__(f"{file}:{line}: {reason}")
        self.file = file
        self.line = line
        self.reason = reason


def refuse(file: str, node: ast.AST, reason: str) -> NotTranslatable:
    """The refusal of a node, to be raised."""
    return NotTranslatable(file, getattr(node, "lineno", 1), reason)
