"""The glossary: words of the trade and of this pack, for readers of other trades and tongues."""

from builder.document import Entry, Facts, Page, Paragraph

WORDS: tuple[tuple[str, str], ...] = (
    ("Apron", "The part of the deck in front of the curtain or of the performance area."),
    ("Basket", "A sling wrapped round a beam with both eyes down."),
    (
        "Bridle",
        (
            "Two or more legs from different points that meet above the load, to make a point where"
            " no beam is."
        ),
    ),
    (
        "Centre line",
        "The line from which left and right are measured. Each house says where its own lies.",
    ),
    ("Company switch", "A switched power service where a visiting show's feeder is connected."),
    ("Datum", "What a distance is measured from."),
    ("Dead hang", "A load hung straight below one point."),
    (
        "Delay",
        (
            "A loudspeaker further out that is delayed so that its sound arrives with or just after"
            " the main sound."
        ),
    ),
    ("Dock", "A place where trucks unload."),
    ("Drop box", "A box of inputs on the stage, at the end of a multicore."),
    ("DS, US", "Downstage, towards the audience. Upstage, away from it."),
    ("Figure", "A value that was computed from what the house wrote. It carries its working."),
    ("Fact", "A value that the house states."),
    ("Finding", "Something the house should know: a danger, a caution or a note."),
    (
        "For the house only",
        (
            "What a figure counts with and the pack does not tell: a load, a board or a place that"
            " is the house's own matter."
        ),
    ),
    ("Front fill", "Small loudspeakers at the deck edge for the first rows."),
    ("Hang", "Anything flown, with the points that carry it."),
    ("Hoist", "A chain hoist that lifts a load to its trim."),
    ("Leveller", "A bridge plate that joins a dock to the bed of a truck."),
    (
        "Low steel",
        "The underside of the lowest roof beam at a place. Hoists and rigging hang below it.",
    ),
    ("Mix position", "Where the sound of the audience is mixed."),
    ("Pack", "This tech pack: the facts and figures of one revision of the house."),
    ("Plaster line", "The line across the stage at the back of the proscenium wall."),
    ("SL, SR", "Stage left and stage right, as seen by someone on stage who faces the audience."),
    ("Split", "Where stage inputs divide, to the mix position, the monitor position and others."),
    ("Tails", "The loose ends of a multicore or of a power feeder."),
    (
        "Terms",
        (
            "Whether visitors may use a thing: included, at extra charge, by arrangement, or not"
            " for visitors."
        ),
    ),
    ("Trim", "The height at which something hangs."),
    ("Working", "How a figure came about: formula, inputs, source, and what is left out."),
    ("Wing", "The space beside the performance area, out of sight."),
)


def glossary_page() -> Page:
    """All words in alphabetical order."""
    entries = [
        Entry(word, meaning) for word, meaning in sorted(WORDS, key=lambda pair: pair[0].lower())
    ]
    return Page(
        "glossary",
        "Glossary",
        (Paragraph("Words as this pack uses them."), Facts(entries)),
        summary="Words as this pack uses them.",
    )
