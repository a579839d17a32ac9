"""A small venue with lines of every style, for orders and for comparison."""

from pathlib import Path

from builder.stock.changing import Stockroom, stockroom_of

HOUSE = """\
# The house file.
name: The Small Shed
what: A shed.
town: Nowhere
setting: indoors
time_zone: Europe, central
revision: {number: 1, on: 2026-01-02, by: technical manager}
configurations:
  - {name: As it is, audience: standing, capacity: 200}
"""
STAGE = """\
# Where things are.
datum: {centre_line: The middle of the deck., reference_line: deck edge}
decks:
  - name: Deck
    configurations: [As it is]
    outline:
      - {across: 5 m SR, depth: 0 m}
      - {across: 5 m SL, depth: 0 m}
      - {across: 5 m SL, depth: 6 m US}
      - {across: 5 m SR, depth: 6 m US}
    usable_width: 9 m
    usable_depth: 5 m
    clear_height: 6 m
places:
  - {name: Mix position, at: {across: centre, depth: 18 m DS, height: 1 m down}}
  - {name: Stage left, at: {across: 8 m SL, depth: 1 m US, height: 0 m up}}
"""
SOUND = """\
# The sound store.
verified: {on: 2025-12-01, by: head of sound, how: measured}   # walked it

drop_boxes:
  - {name: A, place: Stage left, ways: 16, dead: [11], condition: limited, note: "Way 11 is bent."}
  - {name: B, place: Stage left, ways: 12}   # the long one

consoles:
  - name: Meridian     # the big one
    place: Mix position
    inputs: 96
    condition: 'in service'

    # It has its own case.
    note: In the middle.

  - name: Pocket
    place: Stage left
    inputs: 16

# What is in the cases.
stock:
  # Microphones
  - {name: Vellum 8, kind: microphone, use: vocal dynamic, count: 14, working: 13, condition: limited, note: "One was dropped."}
  - {name: Vellum 7, kind: microphone, count: 12}
  - {name: Vellum clip, kind: microphone, count: 10, working: ?}
  # Only for broadcasts.
  - {name: "Vellum 5", kind: microphone, count: 1}
"""  # noqa: E501
TEXTS = {"house.yml": HOUSE, "stage.yml": STAGE, "sound.yml": SOUND}


def room(**others: str) -> Stockroom:
    """The small venue's stock, with files replaced or added by key."""
    return stockroom_of({**TEXTS, **{f"{key}.yml": text for key, text in others.items()}}, {})


def written_to(folder: Path) -> Path:
    """The small venue as a folder."""
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in TEXTS.items():
        (folder / name).write_text(text, encoding="utf-8")
    return folder
