"""
The guide to riders, made from the records that are read and the rules that answer, so it cannot lag
behind them.

``make guide`` writes ``docs/pack/riders.md``; tests keep it equal. All text here is our own, so it
is written as Markdown directly. The pages of all keys are made in ``explaining/pages.py``.
"""

from collections.abc import Iterator

from builder.keys import Key, document, keys_of, records_of, title, value_of
from builder.reading.written import Written
from builder.registry import RULES
from builder.rider.description import Rider
from builder.rules import Rule

VALUES = {
    "length": "a length",
    "mass": "a weight",
    "load": "a load per area",
    "area": "an area",
    "count": "a count",
    "current": "a current",
    "duration": "a duration",
    "share": "a share in per cent",
    "temperature": "a temperature",
    "data rate": "a data rate",
    "permission": "yes or no",
    "yes": "yes or no",
}
RIDERS = """# Write a rider

For a touring crew: what your show needs, in a file that a house's tech pack can answer. `housepack
new --rider rider.yml` writes one to begin with.

```text
housepack fit rider.yml --pack pack.json              against a pack that a house publishes
housepack fit opener.yml headliner.yml --venue venue  a show day of two acts, against a venue's own files
```

On a tech pack's site, the page "Check your show" does the same in the browser: fill in the form, or
drop rider files on it, one for each act of the day. A file of an act that is there already takes
its place. The page's address keeps all acts, and the page says so when it gets too long to send.
Nothing that you write there leaves your device. Terminal and page read the same YAML: text on one
line or several, in quotes or without, `|` and `>`, lists and groups in lines or in brackets. What
riders do not need is refused with its line: anchors and aliases, tags, several documents, keys that
are lists.

## How it is answered

| verdict | it means |
|---|---|
| fits | the house states it, and it is enough |
| fits, with a note | enough, but there is something to know: a cost, a limited item, an old check, a margin within rounding |
| short | the house states it, and it is not enough, or the house has none; by how much, what would mend it, and who could |
| ask | nobody has said, or the rider leaves it open; it becomes a question, ready to send |
| not needed | the show brings it |

Nothing is judged that was not asked. What is not stated is never called a fit or a shortage.

* **Rounding**: 25 mm of a length, 0.5 % of a weight, load or area. Counts, times, currents, levels,
  and what a law or an engineer's letter limits have none.
* **must and should**: a `should` that is short does not make the show short.
* **Power**: each load gets one service; no service, and nothing that feeds it, goes above what is
  free on its fullest phase. What nobody has measured is counted between nothing and the limit of
  what feeds it; what fits only if it draws little is asked. All loads of all acts are placed at the
  same time. Single-phase circuits go on outlets, each on the phase with most left; the verdict
  names outlets and phases. A place that the house does not name is asked. A voltage that the rider
  leaves out, and a service kept for something else, are notes. Sockets in turn are taken as L1, L2,
  L3 from the first; the label at the socket decides. Circuits may be counted without a current.
  Behind a transformer a load is what its source sees of it. 220, 230 and 240 V, and 380, 400 and
  415 V, are one class: a note. More than a rating is short, whatever feeds it; what an outlet
  carries for hours is a note where more is asked. Distances are straight lines; a cable is
  longer.
* **Where and how a load is fed**: `at` names a part of the stage (`upstage left`): it is told by the
  spot of the service or socket, left and right of the middle of the deck, upstage and downstage of
  it, the centre its middle third; else by the part that the house names. `own breaker` fits where
  nothing else is listed on the service and the house says that nothing shares it (`shared_with:
  none`); another load of the show on it is asked about. `other transformer`, `isolated`, `wires` and
  `trips at most` go by what the house writes of the service, and of sockets and what feeds them.
  What nobody wrote is asked. A `tail` is asked.
* **Ways to be fed** (`any of` under `power`): the way is taken with which fewest loads are short,
  then fewest asked, beside all others; of equal ways the first. The verdict names it.
* **Hangs**: a support takes the point that it names, or the nearest in service with a known rating
  within 0.25 m of its spot. What one or two supports carry is statics, three or more a continuous
  beam on level supports; at the most, each of them slack in turn. Hoists and the house's own factor
  for starting and stopping are counted. A hang fits where the most stays within what the house's
  own hangs leave on points, beams, zones and the roof; it is short where it is too much even hung
  level; between the two it is asked. What nobody has said is asked too: a beam without a stated
  limit is no beam without limit. Loaded points keep the house's spacing. Of the house's hoists,
  enough must be left, and the strongest must lift the heaviest support.
* **Bridles**: where no point is near enough to a spot, two free points make it, if the rider tells
  how high the legs may meet (`apex`) and the house states that beams, lean and angle allow it: the
  pair with the gentlest pull, always with a note. Otherwise it is asked; short where the house
  allows no bridles. Three legs are not tried.
* **Load cells** (`held within: 10 %`): a show that has one on every support of three or more, read by
  somebody who stops the hoists, is counted at its level loads and that much more, in place of slack
  supports, always with a note. Levelling by eye or by so many millimetres counts for nothing: how
  stiff your truss is, is not known here.
* **A hang without a weight** is asked of the act, its trim is judged, and no hang after it fits.
* **Two needs that nothing meets both** are told at the later line, and the act is asked which holds.
* **All hangs of all acts** hang at the same time, each judged beside those before it, and so are
  loads on the house's power. Who plays last (`clock`: `ends`, or `on stage` and `set`; else by `on
  stage` alone) has its place first, whatever the order of the files. Where one act does not tell
  it, or two tell the same, the files' order counts: name the headliner's first. Not judged: the truss itself, which hoist goes where, wind, hangs that
  come down before another goes up.
* **Stage plot**: every rectangle is laid on the outlines that the house publishes, on the deck that
  takes the plot best. It must lie on the deck or in one wing, clear of what stands or hangs there,
  clear of the other rectangles and out of lanes, lower than what the house has hung above it (0.5
  m to each side of a hang), and its weight must be carried. What may come down is asked; what stays
  up makes it short, and so it is with a clear height that you ask for. What fits is one
  line; each other rectangle has its own, with how far it is out and what would mend it. A move is
  only told where the rectangle then stands free. 25 mm over an edge or into a neighbour is
  rounding; loads have no tolerance, weights count as spread evenly. Without a place only sizes are
  looked at. List what stands on the floor once: what stands on a riser belongs to the riser. Sight
  lines, and what is between rectangles, are not judged.
* **Risers** (`risers`): each is made of like pieces of the house in rows and columns, turned by a
  quarter where that takes fewer, at a height that they can be set to; no piece is in two of them.
  25 mm is rounding. What they carry joined, and legs and rails, are not judged. Acts are judged each
  by itself.
* **One arrangement**: a show plays in one configuration of the house, and every line of the rider
  is judged in that same one, with what stands in it and what all share. Name yours by the house's
  own name for it, to the letter (`configuration: Standing, end stage`); another name is asked, with
  the names that the house has. Name none, and the best whole one is told first: fewest short, then
  fewest to ask, then fewest short that only should be, then the house's order. A line or two say
  which it is, how the others fare, and the first thing that is worse and better there. At most 64
  are compared; a house with more asks you to name one. What the house can
  set (`set from 0.9 m to 1.4 m`) stands at one setting for all lines and acts, and you are told
  which.
* **Stock**: of a line those count that work; all of it where the line does not say how many do, and
  none of it where it is out of service. Wedges are matched, so one line must have enough; classes
  of microphone are not told apart. Faults of drop boxes stand beside the inputs.
* **By class** (`by class`): of points, line sets and places to park, so many of each class. What is
  as good or better serves, but only once; points count by what is left on each. Not summed over the
  acts.
* **Crew** (`crew`): as many of a skill as come with the house and can be called, all roles of that
  skill together, against the call and the rider's others of that skill at the same time. Of calls
  that may be at the same time a note tells where they would be too many; calls of other acts are
  not added. A skill that the house does not name is a question, with the roles that it names, and
  so is what they must be `able to` do. Beside a call stand by when they are ordered, what the
  shortest call costs at the house's rate, the shortest and longest call, and meals that are due and
  not counted. The house's quote decides what a call costs.
* **Tasks** (`tasks`) are asked: whether the house does a thing is the house's to say.
* **Conditions** (`if`, `unless`): a need whose condition does not hold is not needed. Where nobody
  has said whether it holds, what fits all the same fits, and the rest is asked. Conditions and
  bundles are judged act by act, and are no part of what adds up over a day. Loads, hangs,
  rectangles, crew and tasks may have one too: what is not needed takes nothing from the others, and
  what may be needed counts. An alternative whose condition does not hold is none; one of which that
  is open is asked.
* **Two amounts in an order that you do not know** (`order open`, such as 24 by 16 ft): both readings
  must fit; where they differ, you are asked.
* **An amount that you do not know yet**: `at least: unknown` comes back to you as a question, with
  what the house has.
* **Voltage**: a load on three phases may name the voltage between lines alone: `400 V` for 230/400
  V, `208 V` for 120/208 V.
* **Trucks**: approach, dock and route must all do, and for one and the same dock. A route counts
  where the house says that it leads to the deck; the door of its dock is part of it. A truck is
  tractor and trailer: where you do not say what its `length` is `of`, you are asked. Doors,
  headroom and rated weights give nothing to rounding.
* **Level**: compared only with a limit of the same weighting, metric and place; FOH and front of
  house are the mix position. A limit comes first. Where it leaves room, an equivalent level in
  dB(A) at the mix position is held to the estimate of the house system by its makers' figures:
  above it by more than the error is short, within the error fits with a note. A show with a system
  of its own is not held to it.
* **Show days**: all acts play in one configuration, unless their riders name different ones: then
  each is judged in its own, what adds up has to be there in each, and the change between them is
  asked. What adds up, by the tables below, is summed over all acts, of each act the most that it
  asks of one thing: two lines for the same thing are no sum. Microphones, stands, wedges and boxes
  are shared, so the act that asks most decides, unless a rider says `not shared: yes`. What only
  should be there is summed apart, so that it makes nothing short that must be. Behind
  `stays on deck`
  an aisle of 0.9 m is kept. What stays of one act's stage plot (`stays: yes`) is in the way of the
  others'; where nobody says, it is asked. No aisle is kept between rectangles. Everything else is
  judged act by act.
* **The date**: on a date on which the house is closed every need is short, and of departments that
  are closed their own are. Where nobody can tell whether `plays` lies within, that is asked once.
  A rider without a date is asked for it where a closure is not over on the day of the pack.
* **What is hired in** and may come otherwise than the house tells (`may_differ`): an answer that
  rests on a department of it is asked, short ones too, unless the house says that what comes can only
  be better or only worse.
* **The day's clock**: the last act on checks first, so that its backline stays. Load-in, set-up,
  checks and clearing are laid out one after the other, each as early as it can be, until doors less
  what the house keeps before them. A meal break stops work when the house says it is due; a check
  is not broken by it. No check is heard in the house's quiet hours. A wait as long as a meal break
  counts as one. Then changeovers (strike, rolling on, patch, lines by their rate, monitors, spare),
  sets, curfew, load-out and the crew's longest call. Times before 06:00 in the evening are after
  midnight. A length that decides and that nobody stated is asked; what is common stands in the
  question alone. The day is shown as a table too. Meals after doors are left to you.

Exit status of `housepack fit`: 0 where nothing that must be is short, 1 where something is or a
file cannot be read, 2 for wrong usage.

Verdicts are planning figures. The local code, the makers' data and a licensed or competent person
decide.
"""  # noqa: E501


def riders_page() -> str:
    """
    The guide to riders: every key, and all that can be asked, from the records that are read and
    the rules that answer.
    """
    parts = [RIDERS, "## The file", table(Rider)]
    for record in records_of(Rider):
        parts += [f"### {title(record)}", document(record), table(record)]
    parts += ["## What can be asked", *asking_tables()]
    return "\n\n".join(part.strip() for part in parts) + "\n"


def asking_tables() -> Iterator[str]:
    """The rules by department, the described ones first in each."""
    for department in dict.fromkeys(rule.department for rule in RULES.values()):
        rules = [rule for rule in RULES.values() if rule.department == department]
        rows = [
            f"| `{rule.key}` | {rule.title} | {VALUES[rule.kind]},"
            f" {' or '.join(f'`{way}`' for way in rule.ways)} | {answer(rule)} |"
            for rule in rules
        ]
        yield f"### {department.capitalize()}"
        yield "\n".join(["| what | it asks | value | the answer |", "|---|---|---|---|", *rows])


def answer(rule: Rule) -> str:
    """How a rule is answered, in words."""
    if not rule.section:
        return "a question: no department describes it yet"
    words = {
        "best": "the best of the house's",
        "all": "each of the house's",
        "sum": "all of the house's together",
    }[rule.combine]
    day = {
        "largest": "",
        "sum": "; adds up over the acts of a day",
        "shared": "; shared between the acts of a day, unless a rider says `not shared`",
    }[rule.day]
    return f"{words}{day}{'; no tolerance' if rule.legal else ''}"


def table(kind: type[Written]) -> str:
    """The keys of a record."""
    rows = [row(key) for key in keys_of(kind)]
    return "\n".join(["| key | what it says | value |", "|---|---|---|", *rows])


def row(key: Key) -> str:
    """One key: its name, its explanation, its value, and whether it must be there."""
    need = " **Needed.**" if key.is_needed else " **Decisive.**" if key.is_decisive else ""
    value = value_of(key.field, see_record)
    return f"| `{key.name}` | {cell(key.meaning)}{need} | {cell(value)} |"


def see_record(record: type[Written]) -> str:
    """A record as a value: its keys stand under a heading of their own."""
    return f"keys, see {title(record)}"


def cell(text: str) -> str:
    """Text within a table: a bar would end the cell."""
    return " ".join(text.split()).replace("|", "\\|")
