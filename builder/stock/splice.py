"""One replacement in a text, which knows its own undoing."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Splice:
    """At ``start``, ``old`` gives way to ``new``."""

    start: int
    old: str
    new: str

    def applied(self, text: str) -> str:
        """
        The text with the replacement made.

        Raises
        ------
        ValueError
            If ``old`` does not stand there.
        """
        end = self.start + len(self.old)
        if text[self.start : end] != self.old:
            raise ValueError(
                f"old must stand at {self.start}, got {text[self.start : end]!r} there"
            )
        return text[: self.start] + self.new + text[end:]

    def undone(self) -> "Splice":
        """The replacement that gives the first text back."""
        return Splice(self.start, self.new, self.old)
