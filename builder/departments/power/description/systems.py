"""How a crew writes the electrical system and the phases, and what follows from the words."""

import re
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import core_schema

from builder.formulas.electricity import line_to_line_from_neutral_v
from builder.formulas.phasors import PHASES
from builder.reading.numerals import Unreadable, folded
from builder.reading.quantities import ApparentPower, Current, Power, Quantity
from builder.reading.quantity import NUMBER_AND_UNIT
from builder.reading.refusing import refusing
from builder.reading.words import ReadBy

SYSTEM_EXAMPLES = "230/400 V three phase, 120/240 V split phase, or 230 V single phase"
VOLTS = re.compile(r"(\d{1,5}(?:\.\d{1,2})?)(?: ?/ ?(\d{1,5}(?:\.\d{1,2})?))? ?v(?: |$)")
LINES = {"three phase": 3, "3 phase": 3, "split phase": 2, "single phase": 1, "1 phase": 1}
BASES = ("line to line", "line to neutral")
FREQUENCIES = ("50 hz", "60 hz")
LINE_TO_NEUTRAL_PER_LINE_TO_LINE = 1 / line_to_line_from_neutral_v(line_to_neutral_v=1.0)


@dataclass(frozen=True, slots=True)
class Voltages:
    """
    What a system's words say: live lines, and the voltages, None where the words leave them open.
    """

    lines: int
    line_to_neutral_v: float | None
    line_to_line_v: float | None


class System(str):
    """An electrical system in the author's words, such as ``230/400 V three phase``."""

    @property
    def voltages(self) -> Voltages:
        """Lines and voltages."""
        return voltages_of(self)

    @property
    def lines(self) -> int:
        """Live lines: 1, 2 (split phase) or 3."""
        return self.voltages.lines

    @property
    def frequency(self) -> str:
        """``50 Hz`` or ``60 Hz``; empty where it is not written."""
        return next((name.replace("hz", "Hz") for name in FREQUENCIES if name in spoken(self)), "")


def spoken(text: str) -> str:
    """The words without capitals, commas and hyphens."""
    return " ".join(text.lower().replace(",", " ").replace("-", " ").split())


def voltages_of(text: str) -> Voltages:
    """
    Lines and voltages of a system.

    Raises
    ------
    Unreadable
        ``system-unreadable`` where the words do not make a system.
    """
    words = spoken(text)
    volts = VOLTS.match(words)
    kinds = [phrase for phrase in LINES if phrase in words]
    if volts is None or len(kinds) != 1:
        lacking = (
            "does not begin with a voltage"
            if volts is None
            else "does not say whether it is single, split or three phase"
        )
        raise Unreadable(lacking, "system-unreadable", f"write it like {SYSTEM_EXAMPLES}")
    refuse_leftovers(words[volts.end() :], kinds[0])
    first, second = float(volts[1]), float(volts[2]) if volts[2] else None
    if not first or (second is not None and second <= first):
        raise Unreadable(
            "does not write the lower voltage first",
            "system-unreadable",
            f"write it like {SYSTEM_EXAMPLES}",
        )
    return with_basis(
        LINES[kinds[0]], first, second, next((basis for basis in BASES if basis in words), "")
    )


def refuse_leftovers(rest: str, kind: str) -> None:
    """Refuse words that mean nothing here."""
    for phrase in (kind, *BASES, *FREQUENCIES):
        rest = rest.replace(phrase, "", 1)
    if rest.strip():
        raise Unreadable(
            f"has '{rest.strip()[:40]}', which says nothing about a system",
            "system-unreadable",
            f"write it like {SYSTEM_EXAMPLES}",
        )


def with_basis(lines: int, first_v: float, second_v: float | None, basis: str) -> Voltages:
    """
    Voltages by what the words say they are between.

    One voltage of three phases without its basis stays open.
    """
    if lines == 1:
        if second_v is not None:
            raise Unreadable(
                "gives two voltages for a single phase",
                "system-unreadable",
                "write the one between its two wires, such as 230 V",
            )
        return Voltages(1, first_v, first_v)
    if second_v is not None:
        return Voltages(lines, first_v, second_v)
    share = LINE_TO_NEUTRAL_PER_LINE_TO_LINE if lines == 3 else 0.5
    if basis == "line to line":
        return Voltages(lines, first_v * share, first_v)
    return (
        Voltages(lines, first_v, first_v / share)
        if basis == "line to neutral"
        else Voltages(lines, None, None)
    )


def read_system(text: str) -> System:
    """A system, checked."""
    system = System(folded(text))
    voltages_of(system)
    return system


class Phases(str):
    """Phases in the author's words: ``all``, ``in turn``, or some of L1, L2, L3."""

    @property
    def names(self) -> tuple[str, ...]:
        """The phases named; empty for ``all`` and ``in turn``."""
        return tuple(name for name in PHASES if name in self.split())

    @property
    def in_turn(self) -> bool:
        """True where each outlet has one phase, the next outlet the next phase."""
        return self == "in turn"


PHASES_ADVICE = "write all, in turn (for a row of single-phase outlets), or some of L1, L2, L3"


def read_phases(text: str) -> Phases:
    """
    Phases, each once.

    Raises
    ------
    Unreadable
        ``phase-unknown`` or ``phase-twice``.
    """
    words = spoken(text)
    if words in ("all", "in turn"):
        return Phases(words)
    names = [word.upper() for word in words.split() if word != "and"]
    if not names or (wrong := next((name for name in names if name not in PHASES), "")):
        raise Unreadable(
            f"has '{wrong[:20]}', which is no phase" if names else "is empty",
            "phase-unknown",
            PHASES_ADVICE,
        )
    if len(set(names)) < len(names):
        twice = next(name for name in names if names.count(name) > 1)
        raise Unreadable(f"names {twice} twice", "phase-twice", "name each phase once")
    return Phases(" ".join(sorted(names)))


@dataclass(frozen=True, slots=True)
class PhasesReader:
    """Reads phases from one text or from a list."""

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        del source, handler
        return core_schema.no_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        del schema, handler
        named = {"type": "array", "items": {"enum": list(PHASES)}}
        return {
            "description": "all, in turn, or some of L1, L2, L3",
            "anyOf": [{"type": "string", "examples": ["all", "in turn", "L1"]}, named],
        }

    def read(self, value: Any) -> Phases:
        """The phases, from text, a list of texts, or as they are."""
        if isinstance(value, Phases):
            return value
        if isinstance(value, list) and all(isinstance(part, str) for part in value):
            value = " ".join(value)
        return refusing(read_phases, value, advice=PHASES_ADVICE)


@dataclass(frozen=True, slots=True)
class DrawReader:
    """Reads how much a load draws: kW, kVA or A, told apart by the unit."""

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        del source, handler
        return core_schema.no_info_plain_validator_function(self.validated)

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        del schema, handler
        return {
            "type": "string",
            "pattern": NUMBER_AND_UNIT,
            "description": "a power or a current, such as 6.4 kW, 8 kVA or 16 A",
            "examples": ["6.4 kW", "8 kVA", "16 A"],
        }

    def validated(self, value: Any) -> Quantity:
        """The quantity, from text or as it is."""
        return (
            value
            if isinstance(value, Power | ApparentPower | Current)
            else refusing(read_draw, value, advice="write it like 6.4 kW or 16 A")
        )


def read_draw(text: str) -> Quantity:
    """
    A power, an apparent power or a current.

    Raises
    ------
    Unreadable
        What reading it as a power gave, where it is none of the three.
    """
    refusals = []
    for kind in (Power, ApparentPower, Current):
        try:
            return kind.parse(text)
        except Unreadable as wrong:
            refusals.append(wrong)
    raise Unreadable(refusals[0].reason, refusals[0].code, "write it like 6.4 kW, 8 kVA or 16 A")


WrittenSystem = Annotated[
    System, ReadBy(read_system, System, "an electrical system", "230/400 V three phase")
]
WrittenPhases = Annotated[Phases, PhasesReader()]
Draw = Annotated[Power | ApparentPower | Current, DrawReader()]
