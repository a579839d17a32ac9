"""
What is odd about what a show plugs into: drop boxes on the same channels of the split or past its
last, and frequencies that cannot all be right.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from builder.confirming import odd
from builder.departments.sound.description import Sound
from builder.departments.sound.description.positions import DropBox, Split
from builder.departments.sound.description.stock import Radio, Spectrum
from builder.pack import Finding
from builder.reading.absent import Absent
from builder.reading.otherwise import otherwise
from builder.reading.quantities import Frequency

SAME_HZ = 500.0
"""Two frequencies nearer than this are one: no unit tunes in smaller steps."""


def plugging_oddities(sound: Sound) -> Iterator[Finding]:
    """Everything that is odd about drop boxes and radio."""
    splits = () if isinstance(sound.splits, Absent) else sound.splits
    yield from boxes_past_split(sound.drop_boxes, splits)
    yield from boxes_overlap(sound.drop_boxes, splits)
    on_air = [radio for radio in sound.radio if radio.condition != "out of service"]
    for radio in sound.radio:
        yield from outside_range(radio)
    if sound.spectrum:
        for radio in on_air:
            yield from in_television(radio, sound.spectrum)
    yield from frequencies_twice(on_air)


def channels_of(box: DropBox) -> range | None:
    """The channels of the split that a box arrives on; None where nobody says."""
    first = box.first_channel
    if (
        isinstance(first, Absent)
        or isinstance(box.ways, Absent)
        or box.condition == "out of service"
    ):
        return None
    return range(first, first + box.ways)


def span(channels: range) -> str:
    """Channels in words: `17 to 28`."""
    first, last = channels[0], channels[-1]
    return f"{first}" if first == last else f"{first} to {last}"


def boxes_past_split(boxes: Sequence[DropBox], splits: Sequence[Split]) -> Iterator[Finding]:
    """A drop box whose channels the largest split does not have."""
    known = [split.ways for split in splits if isinstance(split.ways, int)]
    ways = max(known, default=0) if len(known) == len(splits) else 0
    for box in boxes:
        channels = channels_of(box)
        if ways and channels and channels[-1] > ways:
            largest = next(split for split in splits if split.ways == ways)
            yield odd(
                "drop-box-past-split",
                f"Drop box {box.name} arrives on channels {span(channels)}, and {largest.name} has"
                f" {ways} ways.",
                box.where("first_channel"),
                question=" Is its first channel, or the number of its ways, mistyped?",
                asks_about=f"channels {span(channels)} beside {ways} ways",
            )


def boxes_overlap(boxes: Sequence[DropBox], splits: Sequence[Split]) -> Iterator[Finding]:
    """Two drop boxes that arrive on the same channels, where there is one split for both."""
    if len(splits) > 1:
        return
    arriving = [(box, channels) for box in boxes if (channels := channels_of(box))]
    arriving.sort(key=lambda pair: pair[1][0])
    for (first, earlier), (second, later) in furthest_before(arriving):
        shared = range(later[0], min(earlier[-1], later[-1]) + 1)
        if shared:
            word = "channel" if len(shared) == 1 else "channels"
            yield odd(
                "drop-boxes-overlap",
                f"Drop boxes {first.name} ({span(earlier)}) and {second.name} ({span(later)}) both"
                f" arrive on {word} {span(shared)} of the split.",
                second.where("first_channel"),
                question=" Is a first channel mistyped, or are they two boxes on the same cores?",
                asks_about=f"channels {span(later)}, beside {span(earlier)} of {first.name}",
            )


def furthest_before(
    arriving: Sequence[tuple[DropBox, range]],
) -> Iterator[tuple[tuple[DropBox, range], tuple[DropBox, range]]]:
    """Each box in rising order, beside the one before it that reaches furthest."""
    furthest = arriving[:1]
    for box in arriving[1:]:
        yield furthest[0], box
        if box[1][-1] > furthest[0][1][-1]:
            furthest = [box]


def outside_range(radio: Radio) -> Iterator[Finding]:
    """A frequency that its own unit cannot tune to."""
    if radio.tunes is None:
        return
    low, high = sorted((radio.tunes.low, radio.tunes.high), key=lambda end: end.hz)
    for number, frequency in enumerate(radio.on):
        if not low.hz <= frequency.hz <= high.hz:
            yield odd(
                "frequency-outside-range",
                f"{radio.name} is set to {frequency.text}, and it tunes from {low.text} to"
                f" {high.text}.",
                radio.where("on", number),
                question=tuned(frequency, low, high),
                asks_about=f"{frequency.text} beside {low.text} to {high.text}",
            )


def tuned(frequency: Frequency, low: Frequency, high: Frequency) -> str:
    """What a frequency may have been meant as, within a range."""
    return otherwise(frequency, lambda hz: low.hz <= hz <= high.hz)


def in_television(radio: Radio, spectrum: Spectrum) -> Iterator[Finding]:
    """A frequency inside a stretch that the house itself lists as taken by television."""
    for number, frequency in enumerate(radio.on):
        for band in spectrum.television:
            low, high = sorted((band.low, band.high), key=lambda end: end.hz)
            if low.hz < frequency.hz < high.hz:
                yield odd(
                    "frequency-in-television",
                    f"{radio.name} is set to {frequency.text}, and television takes {low.text} to"
                    f" {high.text} by this file's own list.",
                    radio.where("on", number),
                    question=" Is a digit mistyped, or is the list old?",
                    asks_about=f"{frequency.text} beside {low.text} to {high.text}",
                )


def frequencies_twice(radios: Sequence[Radio]) -> Iterator[Finding]:
    """One frequency that two channels are set to."""
    settings = sorted(
        (
            (frequency.hz, order, radio, number)
            for order, radio in enumerate(radios)
            for number, frequency in enumerate(radio.on)
        ),
        key=lambda setting: setting[:2],
    )
    for (one_hz, _, first, _), (other_hz, _, second, number) in pairwise(settings):
        if other_hz - one_hz < SAME_HZ:
            frequency = second.on[number].text
            sentence = (
                f"Two channels of {first.name} are set to {frequency}."
                if first is second
                else f"{first.name} and {second.name} are both set to {frequency}."
            )
            yield odd(
                "frequency-twice",
                f"{sentence} On air at the same time, they are not heard apart.",
                second.where("on", number),
                question=" Is a digit mistyped?",
                asks_about=f"{frequency}, twice",
            )
