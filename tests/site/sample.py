"""An invented house with every block in it, to build and look at the site without a description."""

import base64

from builder.cautions import ELECTRICITY, LOADS, NOISE
from builder.document import (
    Attachment,
    Block,
    Bullets,
    Caution,
    Day,
    Document,
    Entry,
    Facts,
    Folded,
    Heading,
    Headline,
    Link,
    Markup,
    Page,
    Paragraph,
    Picture,
    Row,
    Small,
    Strong,
    Table,
    Tag,
)
from builder.pack import Pack, Revision
from builder.pack_json import to_json

VENUE = "Kornmarkt Hall"
GREY_DOT = base64.b64decode("R0lGODlhAQABAIAAAJmZmQAAACwAAAAAAQABAAACAkQBADs=")
"""The smallest picture there is, for the place of a photograph."""
PLAN = Markup("""<svg xmlns="http://www.w3.org/2000/svg" viewBox="-11 -3 22 16" width="880" height="640" font-size="0.5" fill="none" stroke="currentColor">
<path d="M-9 0V11H9V0" stroke-width="0.12"/>

<path d="M-9 0H-7M7 0H9" stroke-width="0.3"/>
<path d="M0 -2.5V12" stroke-width="0.03" stroke-dasharray="0.5 0.15 0.1 0.15"/>
<path d="M-7 0H7" stroke-width="0.05"/>
<g fill="currentColor" stroke="none" text-anchor="middle"><text x="0" y="-2.6">Centre line</text><text x="-8" y="-0.4">Plaster line</text>
<text x="0" y="11.7">Upstage wall, 11.0 m</text></g>
<g fill="currentColor" stroke="none"><circle cx="-6" cy="2" r="0.14"/><circle cx="-2" cy="2" r="0.14"/><circle cx="2" cy="2" r="0.14"/>
<circle cx="6" cy="2" r="0.14"/><circle cx="-6" cy="6" r="0.14"/><circle cx="-2" cy="6" r="0.14"/><circle cx="2" cy="6" r="0.14"/>
<circle cx="6" cy="6" r="0.14"/></g>
</svg>""")  # noqa: E501


def field_picture(ink: str, paper: str) -> Markup:
    """A stand-in for a computed map, in one scheme."""
    bands = "".join(
        f'<rect x="{40 * step}" y="0" width="40" height="180" fill="{ink}"'
        f' opacity="{0.1 + step / 12:.2f}"/>'
        for step in range(10)
    )
    return Markup(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 220" width="800"'
        f' height="440"><rect width="400" height="220" fill="{paper}"/>{bands}<text x="8" y="206"'
        f' font-size="12" font-family="sans-serif" fill="{ink}">Level on the audience area, dB'
        " relative to the mix position</text></svg>"
    )


def document(extra: tuple[Page, ...] = (), venue: str = VENUE) -> Document:
    """The whole sample, with further pages if wanted."""
    pages = (home(), rigging(), power(), sound(), access(), crew())
    return Document(
        venue,
        (*pages, *extra),
        (Attachment("pack.json", to_json(pack(venue)).encode()), Attachment("dock.jpg", GREY_DOT)),
    )


def pack(venue: str = VENUE) -> Pack:
    """The pack beside the sample: no sections, a revision."""
    return Pack(
        venue,
        Revision("7", "2026-11-02", "Technical office", "4f1c09ab77e2", "Dock leveller replaced"),
        (),
        (),
    )


def home() -> Page:
    """What a reader with two minutes sees."""
    entries = (
        Entry(
            "Capacity",
            "2,350 standing",
            "1,180 seated, with 12 wheelchair places",
            "access#capacity",
        ),
        Entry("Stage", "18.0 × 11.0 m", "59'-1\" × 36'-1\", deck at 1.40 m (4'-7\")"),
        Entry("Trim", "9.60 m", "31'-6\" to low steel", "rigging#points"),
        Entry(
            "Flown load",
            "18.4 t on 45 points",
            "40,600 lb, one point at 1,000 kg",
            "rigging#points",
        ),
        Entry("Power", "2 × 400 A", "400/230 V, three phases, stage left", "power#services"),
        Entry("Noise limit", "99 dB(A) Leq, 60 min", "at the mix position", "sound"),
        Entry("Dock", "2 trucks", "13.6 m trailers, dock height 1.10 m (3'-7\")", "access"),
        Entry("Curfew", "23:00", "music ends; doors closed by 23:30"),
    )
    return Page(
        "index",
        "Overview",
        (
            Paragraph(
                "A hall for standing and seated concerts with a flat floor, a fixed stage and a"
                " grid of rated points over it."
            ),
            Headline(entries),
            Caution(LOADS),
            Heading(2, "What the house should know", "findings"),
            Table(
                ("Level", "What", "Where"),
                (
                    Row(
                        (
                            (Tag("danger", "danger"),),
                            "Point P07 is asked to carry 1,240 kg of 1,000 kg.",
                            (Link("Rigging", "rigging", "p07"),),
                        )
                    ),
                    Row(
                        (
                            (Tag("caution", "caution"),),
                            "The second service has not been checked for 410 days.",
                            (Link("Power", "power", "services"),),
                        )
                    ),
                    Row(
                        (
                            (Tag("note", "note"),),
                            "The house mixer is out for repair until spring.",
                            (Link("Sound", "sound"),),
                        )
                    ),
                ),
                summary="Findings, most serious first",
            ),
            Heading(2, "Who to ask", "contacts"),
            Facts(
                (
                    Entry("Technical office", "Duty engineer, 24 hours", "+00 000 555 0142"),
                    Entry("Rigging", "Head rigger", "weekdays 9:00 to 17:00"),
                )
            ),
        ),
        summary="The answers most people come for, and what the house should know.",
    )


def point_row(index: int) -> Row:
    """One rigging point of the long table."""
    name, across, depth = f"P{index:02}", (index - 1) % 9 - 4, (index - 1) // 9 * 2.0
    rated, used = (1000, 1240) if index == 7 else (1000 if index % 3 else 500, index * 17 % 480)
    state = (Tag("over", "danger"),) if used > rated else (Tag("fits"),)
    side = "SL" if across < 0 else "SR" if across > 0 else "C"
    cells = (
        name,
        (f"{abs(across) * 2.0:.2f} m {side}", " ", Small(f"{abs(across) * 6.56:.1f} ft")),
        f"{depth:.2f} m",
        ("9.60 m ", Small("31'-6\"")),
        (f"{rated:,} kg ", Small(f"{rated * 2.2046:,.0f} lb")),
        f"{used:,} kg",
        f"{rated - used:,} kg",
        state,
        "beam 400, dead hang" if index % 4 else "bridle only",
    )
    return Row(
        cells,
        name,
        (
            None,
            across * 2.0,
            depth,
            9.6,
            float(rated),
            float(used),
            float(rated - used),
            None,
            None,
        ),
    )


def rigging() -> Page:
    """A long page: table of 45 rows, drawing, working, a danger."""
    columns = (
        "Point",
        "From centre",
        "Depth",
        "Low steel",
        "Rated",
        "On the books",
        "Left",
        "State",
        "Condition",
    )
    blocks: tuple[Block, ...] = (
        Paragraph(
            (
                "Forty-five points in five rows. ",
                Strong("Heights are to low steel above the deck"),
                ", the datum is the centre line at the plaster line.",
            )
        ),
        Caution(
            "Point P07 carries 1,240 kg of 1,000 kg. Do not hang from it before the head rigger has"
            " agreed.",
            "P07 is over its rating",
            "danger",
        ),
        Caution(LOADS),
        Heading(2, "Points", "points"),
        Table(
            columns,
            tuple(point_row(index) for index in range(1, 46)),
            "Rigging points",
            (1, 2, 3, 4, 5, 6),
            sortable=True,
        ),
        Folded(
            "Working: what point P07 carries",
            (
                Paragraph(
                    "Two legs of a bridle share the load by the directions in which they pull."
                ),
                Facts(
                    (
                        Entry("Load", "1,800 kg", "stated, line array main left"),
                        Entry("Run, rise", "2.10 m, 3.40 m"),
                        Entry("Other run, rise", "1.30 m, 3.40 m"),
                    )
                ),
                Table(
                    ("Step", "Value"),
                    (
                        Row(("Leg length", "4.00 m")),
                        Row(("Share of the load", "0.69")),
                        Row(("Pull along the leg", "1,240 kg")),
                    ),
                ),
                Caution(
                    "Legs have no weight and no stretch; the load is still.", "Left out", "note"
                ),
            ),
            "working-p07",
        ),
        Heading(2, "Plan", "plan"),
        Picture(
            "rigging-plan",
            PLAN,
            "Plan of the stage with eight of the rigging points, seen from above",
            "Stage from above, points by name",
        ),
        Heading(2, "Hoists", "hoists"),
        Facts(
            (
                Entry(
                    "House hoists",
                    "24 of 1,000 kg",
                    (Tag("checked"), " 2026-09-14 by the head rigger, load test"),
                    "house-hoists",
                ),
                Entry("Chain", "24 m", "79 ft"),
                Entry("Control", "16 channels", "stage left, second gallery"),
                Entry("Trusses", (Small("not stated"),), "ask the house"),
            )
        ),
    )
    return Page(
        "rigging", "Rigging", blocks, "Points, their ratings and what is left on each.", "Stage"
    )


def power() -> Page:
    """Services and circuits."""
    services = (
        Row(
            (
                "Stage left main",
                "400 A",
                "400/230 V, 3 phases, N, PE",
                "single-pole 400 A",
                "312 A",
                "6.1 V at 63 A",
            ),
            "service-main",
            (None, 400, None, None, 312, 6.1),
        ),
        Row(
            (
                "Stage right audio",
                "125 A",
                "400/230 V, 3 phases, N, PE",
                "IEC 60309 125 A 5-pin",
                "96 A",
                "2.4 V at 63 A",
            ),
            "service-audio",
            (None, 125, None, None, 96, 2.4),
        ),
        Row(
            (
                "Dock",
                "63 A",
                "400/230 V, 3 phases, N, PE",
                "IEC 60309 63 A 5-pin",
                "63 A",
                "not stated",
            ),
            "service-dock",
            (None, 63, None, None, 63, None),
        ),
    )
    return Page(
        "power",
        "Power",
        (
            Caution(ELECTRICITY),
            Heading(2, "Services", "services"),
            Table(
                ("Service", "Rating", "System", "Handed over on", "Free", "Drop at the far end"),
                services,
                "Services",
                (1, 4, 5),
                sortable=True,
            ),
            Heading(2, "Rules of the house", "rules"),
            Bullets(
                (
                    "Connect only with the duty electrician.",
                    ("Audio is ", Strong("never"), " taken from the dimmer room."),
                    ("See also ", Link("the points", "rigging", "points"), "."),
                )
            ),
        ),
        "Where power is handed over, on what, and how much is free.",
        "Stage",
    )


def sound() -> Page:
    """A map as a file picture."""
    return Page(
        "sound",
        "Sound",
        (
            Caution(NOISE),
            Heading(2, "Coverage", "coverage"),
            Picture(
                "coverage-1k",
                field_picture("#0e4f57", "#ffffff"),
                "Level falls by 6 dB from the front row to the balcony",
                "1 kHz third octave",
                inline=False,
                dark=field_picture("#8fd0d6", "#15171a"),
            ),
            Heading(2, "Lines", "lines"),
            Facts(
                (
                    Entry("Stage left to mix position", "48 lines, XLR", "72 m"),
                    Entry("Network", "12 × RJ45, 4 fibre pairs", "mix position to amplifier room"),
                )
            ),
        ),
        "House system, lines and what they cover.",
        "Stage",
    )


def access() -> Page:
    """Door to stage."""
    steps = (
        ("Yard gate", "4.20 m", "4.50 m", "40 t"),
        ("Dock door", "3.00 m", "3.40 m", "leveller 6 t"),
        ("Passage", "2.40 m", "2.60 m", "5 kN/m²"),
        ("Stage door", "3.00 m", "4.00 m", "7.5 kN/m²"),
    )
    return Page(
        "access",
        "Access and capacity",
        (
            Paragraph(
                [
                    "Measured on ",
                    Day("2026-02-11"),
                    ". The tightest place is the passage behind the dock.",
                ]
            ),
            Table(
                ("Place", "Width", "Height", "Carries"),
                tuple(Row(step, step[0]) for step in steps),
                "From the yard to the stage",
                (1, 2),
            ),
            Heading(2, "Capacity", "capacity"),
            Facts((Entry("Standing", "2,350"), Entry("Seated", "1,180", "12 wheelchair places"))),
        ),
        "The way in for trucks, cases and people.",
        "House",
    )


def crew() -> Page:
    """A short page."""
    return Page(
        "crew",
        "Local crew",
        (
            Facts(
                (
                    Entry("Loaders", "12", "minimum call 4 hours"),
                    Entry("Riggers", "4 up, 2 down"),
                    Entry("Meal break", "after 5 hours"),
                )
            ),
        ),
        group="House",
    )
