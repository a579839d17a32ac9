"""
Riders in which one thing is to be seen each: a quantity, a clock, a plot, a hang, something broken.
"""

import random
from pathlib import Path

ROOT = Path(__file__).parents[2]
WHOLE = [
    (ROOT / "tests" / "riders" / f"{act}.yml").read_text("utf-8")
    for act in ("club", "theatre", "arena")
]
WHOLE.append((ROOT / "builder" / "starter" / "rider.yaml").read_text("utf-8"))
VALUES = [
    "12 m",
    "12.5 m",
    "1,200 mm",
    "27'-10 1/2\"",
    "27' 10.5\"",
    "40 ft",
    "40 ft (12.19 m)",
    "60 ft / 18.3 m",
    "3 ft 6 in",
    "10½ in",
    "950 mm",
    "1/2 in",
    "19′ 6″",
    "12",
    "12 kg",
    "-3 m",
    "",
    "?",
    "unknown",
    "Unknown",
    "none",
    "m",
    "12 mm mm",
    "1,2 m",
    "1 000 m",
    "9'-14\"",
    "0 m",
    "0.0001 mm",
    "999999999999999 m",
    "1234567890123456 m",
    "12M",
    "12 FT",
]
WEIGHTS = ["900 kg", "1.5 t", "2000 lb", "1 short ton", "1 ton", "3 oz", "12 m"]
LOADS = ["7.2 kPa", "150 psf", "500 kg/m2", "5 kN/m2", "7.2"]
TIMES = ["22:30", "10:30 pm", "12 am", "24:00", "24:01", "9", "9:75", "13 pm", "00:00"]
LASTING = [
    "90 min",
    "1 h 30 min",
    "1.5 h",
    "90",
    "0 min",
    "-5 min",
    "?",
    "unknown",
    "1/3 h",
    "3 h 61 min",
    "4 days",
]
CLOCKS = [
    "set up: 5 h",
    "check from: '15:00'",
    "check: soon",
    "day: Monday",
    "doors: 7 pm",
    "changeover: 25 min",
    (
        "changeover parts: {roll on: 4 min, patch: 3 min, lines: 24, lines a minute: 5, lines"
        " checked before: yes, monitors: 4 min, spare: 0 min}"
    ),
    "changeover parts: {lines: 24, lines a minute: 0}",
    "changeover parts: {lines: few}",
    "changeover parts: {lines checked before: perhaps}",
    "changeover parts: {roll: 4 min}",
    "changeover parts: 25 min",
    "strike: 6 min",
    "reset: 6 min",
]
BROKEN = [
    "act: A\n  b: c\n",
    "act: A\nact: B\n",
    "act: &a B\n",
    "act: *a\n",
    "act: [\n",
    "- a\n- b\n",
    "act: A\nneeds:\n- {what: haze, is: yes}\n",
    "act:\n",
    "",
    "act: A\nfoo: bar\n",
    (
        "act: A\nneeds:\n  - what: haze\n    is: yes\n  - any of:\n      - what: forklifts\n       "
        " at least: 1\n"
    ),
    "act: A\nneeds: none\n",
    "act: A\npower:\n  - {for: x}\n",
    "act: 'it''s'\n",
    'act: "a \\" b"\n',
    "act: A # comment\n",
    "act: A#b\n",
    "\tact: A\n",
    "act: A\nquestions: [One?, 'Two, three?']\n",
    "act: A\nquestions:\n  - Is it: so?\n",
    "act: A\n---\nact: B\n",
    "act: A\nlevel: {at: 105 dB}\n",
    "act: A\nlevel: {at: 98 dBA, metric: peak level, over: 1 h 30 min, place: here}\n",
    "act: A\nclock: {day: Someday}\n",
    "act: A\ntrucks: {count: 1}\n",
    "act: A\nneeds:\n  - {what: deck height, between: [3 m, 1 m]}\n",
    "act: A\nneeds:\n  - {what: deck height, between: [3 m, unknown]}\n",
    "act: A\nneeds:\n  - {what: deck height, at least: Unknown}\n",
    "act: A\nneeds:\n  - {what: deck height, at least: ?}\n",
    "act: A\nneeds:\n  - {what: haze, is: unknown}\n",
    "act: A\nneeds:\n  - {what: haze, at least: 1}\n",
    "act: A\nneeds:\n  - {what: haze, is: perhaps}\n",
    "act: A\nstays on deck: 4\n",
    "act: A\nplays: 2026-12-05\nclock: {ends: '22:00'}\n",
    "act: A\nplays: 2028-02-29\nclock: {load in: '10:00', ends: '01:00'}\nbooking: second hold\n",
    "act: A\nplays: 2026-12-05\nclock: {day: Saturday, ends: '22:00'}\n",
    "act: A\nplays: 2026-12-05\nclock: {day: Friday, ends: '22:00'}\n",
    "act: A\nplays: 2027-02-29\n",
    "act: A\nplays: 0000-01-01\n",
    "act: A\nplays: 5.12.2026\n",
    "act: A\nplays: ''\n",
    "act: A\nplays: 2026-12-05\nbooking: perhaps\n",
]
BROKEN_PLOTS = [
    "act: A\nplot: [{name: A, width: 0 m, depth: 1 m}]\n",
    "act: A\nplot: [{name: A, width: 1 m}]\n",
    "act: A\nplot: [{name: A, width: 1 m, depth: 1 m, at: centre}]\n",
    "act: A\nplot: [{name: A, width: 1 m, depth: 1 m, at: {across: centre}}]\n",
    "act: A\nplot: [{name: A, width: 1 m, depth: 1 m, on: roof}]\n",
    "act: A\nplot: [{name: A, width: 1 m, depth: 1 m, weight: -1 kg}]\n",
    "act: A\nplot: [{name: A, width: 1 m, depth: 1 m, turned: 5}]\n",
    "act: A\nplot: [{name: A, width: 1 m, depth: 1 m, stays: perhaps}]\n",
    "act: A\nplot: [{name: A, width: 1 m, depth: 1 m, colour: red}]\n",
    "act: A\nplot: none\n",
    "act: A\nplot: [A]\n",
    "act: A\nplot:\n" + "  - {name: A, width: 1 m, depth: 1 m}\n" * 101,
]
ACROSS = [
    "4.2 m SL",
    "9.5 m SR",
    "14 ft stage left",
    "centre",
    "on centre",
    "0 m",
    "3 m",
    "-3 m SL",
    "3 m US",
    "3 m house left",
    "SL",
    "4'-6\" sr",
    "2 m left",
    "3 m SL (10 ft)",
]
DEPTHS = [
    "2 m US",
    "3 ft 6 in DS",
    "1 m upstage",
    "0 ft",
    "1 m downstage",
    "1 m SL",
    "centre",
    "2 m",
    "1/2 in DS",
]
PLOTS = [
    (
        "name: Riser, width: 8 ft, depth: 2.4 m, height: 1 ft, weight: 1500 lb, point load: 300 kg,"
        " stays: yes"
    ),
    "name: Lane, width: 1 m, depth: 9 m, keep clear: yes, stays: no, strictness: should",
    "name: Wall, width: 9 m, depth: 0.3 m, turned: -12.5 deg, on: stage left",
    "name: Wall, width: 9 m, depth: 0.3 m, turned: 90 degrees, on: deck",
    "name: Wall, width: 9 m, depth: 0.3 m, turned: 30°",
]


HANGS = [
    "{name: A, supports: [{point: R1, load: 450 kg}]}",
    (
        "{name: A, supports: [{across: 3 m SR, depth: 2 ft 6 in US, load: 450 kg}], trim: 7.5 m up,"
        " below steel: 1 m}"
    ),
    (
        "{name: A, supports: [{across: centre, depth: 0 m, load: 1000 lb}, {load: 450 kg}], hoists:"
        " counted, strictness: should, trim: 24 ft}"
    ),
    (
        "{name: A, length: 12 m, weight: 8 lb/ft, supports: [{point: R1, at: 1 m}, {point: R2, at:"
        " 11 m}], loads: [{what: x, count: 12, weight: 26 kg}]}"
    ),
    (
        "{name: A, length: 12 m, weight in all: 140 kg, supports: [{at: 1 m}, {at: 11 m}], hoists:"
        " show, hoist weight: 75 lb}"
    ),
    (
        "{name: A, supports: [{point: R1}], loads: [{what: y, weight: 1 t, from: 1 m, to: 3 m},"
        " {what: z, weight: 5 t, at: 2 m}]}"
    ),
    (
        "{name: A, supports: [{point: R1, at: 0 m}, {point: R2, at: 2 m}], loads: [{what: y,"
        " weight: 1 t, from: 1 m, to: 3 m}]}"
    ),
    "{name: A, supports: []}",
    "{name: A}",
    "{supports: [{point: R1, load: 450 kg}]}",
    "{name: A, supports: [{point: R1}]}",
    "{name: A, supports: [{point: R1, load: 450 kg}, {point: R2}]}",
    "{name: A, supports: [{point: R1, load: 450 kg}, {point: r1, load: 450 kg}]}",
    "{name: A, supports: [{point: R1, load: 450 kg}], weight in all: 1 kg}",
    "{name: A, supports: [{point: R1, across: 1 m SL, depth: 1 m US, load: 450 kg}]}",
    "{name: A, supports: [{across: 1 m SL, load: 450 kg}]}",
    "{name: A, supports: [{across: 1 m SL, depth: 2 m US, apex: 24 ft up, load: 450 kg}]}",
    "{name: A, supports: [{across: 1 m SL, depth: 2 m US, apex: 1 m down, load: 450 kg}]}",
    "{name: A, supports: [{point: R1, apex: 7 m, load: 450 kg}]}",
    "{name: A, supports: [{across: 1 m, depth: 1 m US, load: 450 kg}]}",
    "{name: A, supports: [{across: 1 m US, depth: 1 m US, load: 450 kg}]}",
    "{name: A, supports: [{across: -1 m SL, depth: 1 m US, load: 450 kg}]}",
    "{name: A, supports: [{across: 1 m house left, depth: 1 m US, load: 450 kg}]}",
    "{name: A, supports: [{across: 10'-6 1/2\" SL, depth: 1 m upstage, load: 450 kg}]}",
    "{name: A, supports: [{across: 3 ft (0.91 m) SL, depth: 1 m US, load: 450 kg}]}",
    "{name: A, supports: [{across: 3 ft SL (0.91 m), depth: 1 m US, load: 450 kg}]}",
    "{name: A, supports: [{point: R1, load: 450 kg}], trim: 1 m down}",
    "{name: A, supports: [{point: R1, load: 450 kg}], below steel: 1 m}",
    "{name: A, supports: [{point: R1, load: 450 kg}], hoists: show}",
    "{name: A, supports: [{point: R1, load: 450 kg}], hoist weight: 52 kg}",
    "{name: A, supports: [{point: R1, load: 450 kg}], hoists: theirs}",
    "{name: A, supports: [{point: R1, load: -450 kg}]}",
    "{name: A, supports: [{point: R1, at: -1 m, load: 450 kg}]}",
    (
        "{name: A, supports: [{point: R1, at: 1 m}, {point: R2}], loads: [{what: x, weight: 26 kg,"
        " at: 1 m}]}"
    ),
    (
        "{name: A, supports: [{point: R1, at: 1 m}, {point: R2, at: 1.005 m}], loads: [{what: x,"
        " weight: 26 kg, at: 1 m}]}"
    ),
    (
        "{name: A, supports: [{point: R1, at: 1 m}, {point: R2, at: 2 m}], loads: [{what: x,"
        " weight: 26 kg}]}"
    ),
    (
        "{name: A, length: 2 m, supports: [{point: R1, at: 1 m}, {point: R2, at: 3 m}], loads:"
        " [{what: x, weight: 26 kg}]}"
    ),
    "{name: A, length: 0 m, supports: [{point: R1}], loads: [{what: x, weight: 26 kg}]}",
    "{name: A, weight: 8 kg/m, supports: [{point: R1}]}",
    "{name: A, weight: 8 kg/m, weight in all: 8 kg, length: 3 m, supports: [{point: R1}]}",
    (
        "{name: A, supports: [{point: R1}], loads: [{what: x, weight: 26 kg, at: 1 m, from: 1 m,"
        " to: 2 m}]}"
    ),
    "{name: A, supports: [{point: R1}], loads: [{what: x, weight: 26 kg, from: 2 m, to: 1 m}]}",
    "{name: A, supports: [{point: R1}], loads: [{what: x, weight: 26 kg, from: 2 m}]}",
    "{name: A, supports: [{point: R1}], loads: [{weight: 26 kg}]}",
    "{name: A, supports: [{point: R1}], loads: [{what: x}]}",
    "{name: A, supports: [{point: R1, hook: yes, load: 3 kg}]}",
    "{name: A, supports: [" + ", ".join("{load: 1 kg}" for _ in range(12)) + "]}",
    "{name: A, supports: [" + ", ".join("{load: 1 kg}" for _ in range(13)) + "]}",
    "[]",
    "A",
]


def quoted(text: str) -> str:
    """A text in single quotes, as YAML has them."""
    return "'" + text.replace("'", "''") + "'"


def named_riders() -> list[str]:
    """Riders: whole, with one value each, broken ones, and a few hundred with numbers by chance."""
    found = [*WHOLE, *BROKEN, *BROKEN_PLOTS]
    found += [
        f"act: A\nneeds:\n  - {{what: stage width, at least: {quoted(value)}}}\n"
        for value in VALUES
    ]
    found += [
        f"act: A\nneeds:\n  - {{what: point load, at least: {quoted(value)}}}\n"
        for value in WEIGHTS
    ]
    found += [
        f"act: A\nneeds:\n  - {{what: deck load, at least: {quoted(value)}}}\n" for value in LOADS
    ]
    found += [
        f"act: A\nneeds:\n  - {{what: forklifts, at least: {quoted(value)}}}\n"
        for value in ("2", "2.0", "-1", "1,000", "1/2", "2 m", "4/2")
    ]
    found += [f"act: A\nclock: {{ends: {quoted(value)}}}\n" for value in TIMES]
    found += [f"act: A\nhangs:\n  - {hang}\n" for hang in HANGS]
    found.append(f"act: A\nhangs:\n  - {HANGS[0]}\n  - {HANGS[1]}\n")
    found.append(f"act: A\nhangs:\n  - {HANGS[0]}\n  - {HANGS[1].replace('name: A', 'name: B')}\n")
    found += [
        f"act: A\nplot:\n  - {{{line}}}\n  - {{{line}, at: {{across: 1 m SL, depth: 2 ft US}}}}\n"
        for line in PLOTS
    ]
    spots = [(across, "1 m US") for across in ACROSS] + [("1 m SL", depth) for depth in DEPTHS]
    found += [
        f"act: A\nplot: [{{name: A, width: 1 m, depth: 1 m, at: {{across: {quoted(x)}, depth:"
        f" {quoted(y)}}}}}]\n"
        for x, y in spots
    ]
    found += [f"act: A\nclock: {{on stage: '21:00', set: {quoted(value)}}}\n" for value in LASTING]
    found += [f"act: A\nclock:\n  load in: '9:00'\n  {line}\n" for line in CLOCKS]
    chance = random.Random(7)
    for _ in range(300):
        number = f"{chance.randint(0, 9999) / 10 ** chance.randint(0, 3):g}"
        what, unit = chance.choice(
            [
                ("stage width", "ft"),
                ("stage width", "m"),
                ("stage width", "in"),
                ("point load", "lb"),
                ("deck load", "psf"),
                ("storage area", "sq ft"),
            ]
        )
        found.append(f"act: A\nneeds:\n  - {{what: {what}, at least: {number} {unit}}}\n")
    return found
