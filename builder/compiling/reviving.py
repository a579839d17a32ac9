"""
From JSON to the values that the rules take: where a record holds a mapping, JSON has an object.
"""

from builder.compiling.declaring import Declarations
from builder.compiling.expressions import field_access
from builder.compiling.kinds import NONE, Kind, choices


class Reviver:
    """Writes, for each kind that holds a mapping, a function that makes it from JSON."""

    def __init__(self, declarations: Declarations) -> None:
        self.declarations = declarations
        self.names: dict[Kind, str] = {}
        self.functions: list[str] = []

    def name(self, kind: Kind) -> str:
        """
        The function that makes a value of a kind from JSON, or an empty text where JSON's own value
        does.
        """
        if not self.holds_map(kind, ()):
            return ""
        if kind not in self.names:
            self.names[kind] = f"revive_{len(self.names)}"
            name = self.names[kind]
            self.functions.append(f"function {name}(value) {{\n{self.body(kind)}\n}}")
        return self.names[kind]

    def holds_map(self, kind: Kind, above: tuple[Kind, ...]) -> bool:
        """Whether a mapping is anywhere in a kind."""
        if kind.name == "map":
            return True
        if kind in above:
            return False
        return any(self.holds_map(part, (*above, kind)) for part in self.parts(kind))

    def parts(self, kind: Kind) -> list[Kind]:
        """The kinds within a kind, fields of a record included."""
        fields = self.declarations.record(kind).fields.values() if kind.name == "record" else ()
        return [*kind.parts, *fields]

    def body(self, kind: Kind) -> str:
        """How a value of a kind is made."""
        made = [self.one(part) for part in choices(kind) if part != NONE]
        if len({part.name for part in choices(kind) if part.name not in ("record", "none")}) > 1:
            raise ValueError(f"kind must be told apart in JSON, got {kind}")
        absent = " if (value === null || value === undefined) return value;"
        return "\n".join([absent, *made, " return value;"])

    def one(self, kind: Kind) -> str:
        """How one kind is made, in place where it is a record."""
        if kind.name == "map":
            inner = self.name(kind.parts[1])
            value = f"{inner}(value[key])" if inner else "value[key]"
            made_key = "Number(key)" if kind.parts[0].name == "int" else "key"
            return f" return new Map(Object.keys(value).map((key) => [{made_key}, {value}]));"
        if kind.name == "list":
            inner = self.name(kind.parts[0])
            return f" return value.map({inner});" if inner else ""
        if kind.name == "record":
            return " ".join(
                f" if (value{field_access(field)} !== undefined)"
                f" value{field_access(field)} = {inner}(value{field_access(field)});"
                for field, part in self.declarations.record(kind).fields.items()
                if (inner := self.name(part))
            )
        if kind.name == "tuple":
            made = [
                f"{inner}(value[{place}])" if (inner := self.name(part)) else f"value[{place}]"
                for place, part in enumerate(kind.parts)
            ]
            return f" return [{', '.join(made)}];"
        return ""
