"""
Power connectors of open standards: what they carry and what goes into what. Nominal data; the
device's own marking decides.
"""

from dataclasses import dataclass
from itertools import product
from typing import Literal

from builder.formulas.cite import Citation, cites
from builder.formulas.sources import COMMON_PRACTICE, IEC_60309_2, NEMA_WD_6


@dataclass(frozen=True, slots=True)
class Connector:
    """
    A connector type. ``poles`` counts live and neutral contacts, ``wires`` the protective one too.

    ``volts`` is the standard's own voltage range or designation, as printed. ``accepts`` names
    other plugs that its outlet also takes. ``keyed`` is False where no standard fixes the shape, so
    that only a look at both parts tells.
    """

    name: str
    family: str
    ampere_a: int
    poles: str
    wires: int
    volts: str
    phases: int
    citation: Citation
    colour: str = ""
    earth_position: str = ""
    accepts: tuple[str, ...] = ()
    keyed: bool = True


@dataclass(frozen=True, slots=True)
class Mating:
    """Whether a plug goes into an outlet. 'ask' where no standard tells."""

    verdict: Literal["yes", "no", "ask"]
    why: str


IEC_FORMS = (
    ("2P+E", 3, 1, "100–130 V", "yellow", "4 h"),
    ("2P+E", 3, 1, "200–250 V", "blue", "6 h"),
    ("3P+E", 4, 3, "100–130 V", "yellow", "4 h"),
    ("3P+E", 4, 3, "200–250 V", "blue", "9 h"),
    ("3P+E", 4, 3, "380–415 V", "red", "6 h"),
    ("3P+N+E", 5, 3, "57/100–75/130 V", "yellow", "4 h"),
    ("3P+N+E", 5, 3, "120/208–144/250 V", "blue", "9 h"),
    ("3P+N+E", 5, 3, "200/346–240/415 V", "red", "6 h"),
)
"""
Contacts, wires, phases, voltage at 50 and 60 Hz, colour, and the clock position of the earth
contact.
"""

NEMA_FORMS = (
    ("5-15", 15, "2P+E", 3, 1, "125 V", ()),
    ("5-20", 20, "2P+E", 3, 1, "125 V", ("NEMA 5-15",)),
    ("6-15", 15, "2P+E", 3, 1, "250 V", ()),
    ("6-20", 20, "2P+E", 3, 1, "250 V", ("NEMA 6-15",)),
    ("14-30", 30, "3P+E", 4, 1, "125/250 V", ()),
    ("14-50", 50, "3P+E", 4, 1, "125/250 V", ()),
    ("L5-15", 15, "2P+E", 3, 1, "125 V", ()),
    ("L5-20", 20, "2P+E", 3, 1, "125 V", ()),
    ("L5-30", 30, "2P+E", 3, 1, "125 V", ()),
    ("L6-15", 15, "2P+E", 3, 1, "250 V", ()),
    ("L6-20", 20, "2P+E", 3, 1, "250 V", ()),
    ("L6-30", 30, "2P+E", 3, 1, "250 V", ()),
    ("L14-20", 20, "3P+E", 4, 1, "125/250 V", ()),
    ("L14-30", 30, "3P+E", 4, 1, "125/250 V", ()),
    ("L15-20", 20, "3P+E", 4, 3, "250 V", ()),
    ("L15-30", 30, "3P+E", 4, 3, "250 V", ()),
    ("L21-20", 20, "4P+E", 5, 3, "120/208 V", ()),
    ("L21-30", 30, "4P+E", 5, 3, "120/208 V", ()),
)
"""
Configuration, ampere, contacts, wires, phases, voltage, and what else its outlet takes. A letter L
says that it locks.
"""


def _iec_connectors() -> tuple[Connector, ...]:
    citation = Citation(
        IEC_60309_2,
        "standard sheets and clock positions, series I, from memory",
        "plug fits outlet where ampere, contacts and earth position agree",
    )
    return tuple(
        Connector(
            name=f"IEC 60309 {ampere} A {wires}-pin {colour}",
            family="IEC 60309",
            ampere_a=ampere,
            poles=poles,
            wires=wires,
            volts=volts,
            phases=phases,
            colour=colour,
            earth_position=position,
            citation=citation,
        )
        for ampere, (poles, wires, phases, volts, colour, position) in product(
            (16, 32, 63, 125), IEC_FORMS
        )
    )


def _nema_connectors() -> tuple[Connector, ...]:
    citation = Citation(
        NEMA_WD_6,
        "configuration charts",
        "plug fits outlet of its own configuration; a 20 A slot takes the 15 A blade",
    )
    return tuple(
        Connector(
            f"NEMA {form}", "NEMA", ampere, poles, wires, volts, phases, citation, accepts=accepts
        )
        for form, ampere, poles, wires, phases, volts, accepts in NEMA_FORMS
    )


SINGLE_POLE = tuple(
    Connector(
        name=f"single-pole {ampere} A set",
        family="single-pole",
        ampere_a=ampere,
        poles="one contact a connector",
        wires=5,
        volts="up to 600 V, as marked",
        phases=3,
        keyed=False,
        citation=Citation(
            COMMON_PRACTICE,
            "five single connectors: earth, neutral, three lines",
            "no standard fixes their shape or who is plug",
        ),
    )
    for ampere in (150, 400)
)

CONNECTORS: tuple[Connector, ...] = (*_iec_connectors(), *_nema_connectors(), *SINGLE_POLE)


@cites(
    IEC_60309_2,
    "naming by ampere, contacts and colour; NEMA WD 6 configurations",
    equation="same name or its beginning",
)
def connectors_named(name: str) -> tuple[Connector, ...]:
    """
    Connectors that a written name may mean.

    Parameters
    ----------
    name
        Such as ``NEMA L21-30``, ``IEC 60309 32 A 5-pin red`` or, without colour, ``IEC 60309 32 A
        5-pin``.

    Returns
    -------
    tuple of Connector
        One where the name is whole, several where it leaves the voltage open, none where it is
        unknown.
    """
    wanted = " ".join(name.lower().split())
    whole = tuple(connector for connector in CONNECTORS if connector.name.lower() == wanted)
    return whole or tuple(
        connector for connector in CONNECTORS if connector.name.lower().startswith(f"{wanted} ")
    )


@cites(
    IEC_60309_2,
    "NEMA WD 6 configurations; clock positions from memory",
    equation="same family, ampere, contacts and earth position, or an outlet that accepts the plug",
)
def mates(*, plug: Connector, outlet: Connector) -> Mating:
    """
    Whether a plug goes into an outlet.

    Parameters
    ----------
    plug, outlet
        The two types.

    Returns
    -------
    Mating
        'yes', 'no' or 'ask', and why.

    Notes
    -----
    That it goes in says nothing of voltage, frequency or who may switch on.
    """
    if plug.family != outlet.family:
        return Mating("no", f"{plug.family} and {outlet.family} are different families")
    if plug.ampere_a != outlet.ampere_a and plug.name not in outlet.accepts:
        return Mating("no", f"{plug.ampere_a} A and {outlet.ampere_a} A parts do not go together")
    if not plug.keyed:
        return Mating(
            "ask",
            "no standard fixes the shape of single-pole connectors: compare pattern, gender and"
            " colours with the house",
        )
    if plug.name == outlet.name or plug.name in outlet.accepts:
        return Mating("yes", f"an outlet {outlet.name} takes a plug {plug.name}")
    return Mating(
        "no", f"{plug.name} ({plug.volts}) and {outlet.name} ({outlet.volts}) are keyed apart"
    )
