"""What the hangs weigh: offered to rigging, and shown with its working."""

from collections.abc import Iterator, Mapping
from functools import partial
from math import cos, radians

from builder.cautions import LOADS
from builder.departments.sound.areas.geometry import boxes_of_hang, centre_of_weight
from builder.departments.sound.description import Sound
from builder.departments.sound.description.loudspeakers import Hang, Model, Spot
from builder.departments.sound.description.placed import KnownModel, is_known_model
from builder.exchange import HungLoad
from builder.formulas.loads import PointLoad, total_load_kg
from builder.pack import Figure, Input, Value, one_or_both
from builder.reading.absent import Absent
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System, shown
from builder.reading.quantities import Height, Mass
from builder.working import check_of, figure, missing, weakest_of, worked

Models = Mapping[str, KnownModel]


def models_of(sound: Sound) -> Models:
    """The loudspeaker models of which all is known that a field needs, by name."""
    return {model.name: model for model in sound.models if is_known_model(model)}


def every_model_of(sound: Sound) -> Mapping[str, Model]:
    """All loudspeaker models by name, whatever is known of them."""
    return {model.name: model for model in sound.models}


def hangs_of(sound: Sound) -> tuple[Hang, ...]:
    """The hangs that are described."""
    return () if isinstance(sound.hangs, Absent) else sound.hangs


def hung_loads(sound: Sound) -> Iterator[HungLoad]:
    """
    The weight of each hang, for rigging, as far as it is known. One that hangs from nothing stands.

    A hang out of service still hangs, so it is counted. Its frame is over the boxes, or where the
    hang is written to be if their own middle is not known.
    """
    models = every_model_of(sound)
    for hang in hangs_of(sound):
        model = models.get(hang.model)
        if model is None or hang.carried_by is Absent.NONE:
            continue
        carrier = "" if isinstance(hang.carried_by, Absent) else hang.carried_by
        what = name_of_load(hang)
        across_m, depth_m = hangs_at(hang, model)
        bottom_m = bottom_of(hang, model)
        top_m = hang.top.m if bottom_m is not None and isinstance(hang.top, Height) else None
        kg, more_kg = least_and_more(model.weight, hang.boxes)
        yield HungLoad(
            "sound",
            what,
            carrier,
            kg,
            weakest_of((hang, model)),
            more_kg,
            across_m is not None,
            across_m=across_m,
            depth_m=depth_m,
            top_m=top_m,
            bottom_m=bottom_m,
        )
        if hang.frame is not Absent.NONE:
            frame = hang.name if hang.house_only else f"Frame of {hang.name}"
            kg, more_kg = least_and_more(hang.frame, 1)
            yield HungLoad(
                "sound",
                frame,
                carrier,
                kg,
                check_of(hang),
                more_kg,
                across_m is not None or isinstance(hang.at, Spot),
                across_m=own_place(hang)[0] if across_m is None else across_m,
                depth_m=own_place(hang)[1] if depth_m is None else depth_m,
            )


def own_place(hang: Hang) -> tuple[float | None, float | None]:
    """Where a hang is written to hang, across and deep; None where nobody knows. [m]"""
    if isinstance(hang.at, Absent):
        return None, None
    return hang.at.across.m, hang.at.depth.m


def least_and_more(weight: Mass | Absent, count: int | Absent) -> tuple[float, float | None]:
    """
    The least that so many of a thing weigh, and how much more they may weigh; None where nobody
    knows. [kg]
    """
    (least, most), (fewest, largest) = ends_of(weight), ends_of(count)
    least_kg = (fewest or 0) * least.kg if least else 0.0
    known = most is not None and largest is not None
    return least_kg, largest * most.kg - least_kg if known and most and largest else None


def name_of_load(hang: Hang) -> str:
    """What hangs, for rigging; no more than a name of one that is for the house only."""
    if hang.house_only:
        return hang.name
    return f"{hang.boxes} {hang.model}" if isinstance(hang.boxes, int) else hang.model


def hangs_at(hang: Hang, model: Model) -> tuple[float | None, float | None]:
    """
    Where the boxes' weight hangs, across and deep; None where their depth or splay is not known,
    and rigging then takes its hang's middle.
    """
    if not is_known_model(model):
        return None, None
    boxes = boxes_of_hang(hang, box_height_m=model.height.m)
    if not boxes or isinstance(model.depth, Absent):
        return None, None
    across_m, depth_m, _ = centre_of_weight(boxes, box_depth_m=model.depth.m)
    return across_m, depth_m


def bottom_of(hang: Hang, model: Model) -> float | None:
    """The lowest front edge of a hang above the deck, None where its splay is not known. [m]"""
    if not is_known_model(model):
        return None
    boxes = boxes_of_hang(hang, box_height_m=model.height.m)
    return (
        boxes[-1].at[2] - model.height.m / 2 * cos(radians(boxes[-1].down_deg)) if boxes else None
    )


def lacking_weights(hang: Hang, model: Model) -> tuple[str, ...]:
    """
    What must be known before a hang can be weighed: each weight, or both its ends. 'none' is known:
    nothing.
    """
    boxes = ("the weight of a box",) if None in ends_of(model.weight) else ()
    if not isinstance(hang.boxes, int):
        boxes = ("how many boxes it has", *boxes)
    if hang.frame is not Absent.NONE and None in ends_of(hang.frame):
        return (*boxes, "the weight of the frame")
    return boxes


def weight_figure(hang: Hang, model: Model, key: str, system: System) -> Figure:
    """The weight of boxes and frame together, or its two ends."""
    label = "Weight of boxes and frame"
    inputs = [
        Input("Boxes", as_written(hang.boxes)),
        Input("One box", as_written(model.weight)),
        Input("Frame, bar and cable", as_written(hang.frame)),
    ]
    weighed = partial(
        worked,
        total_load_kg,
        inputs=inputs,
        leaves_out="Hoists, chains and steel above the frame are counted with the rigging.",
        equation="weight = boxes × one box + frame",
    )
    lacking = lacking_weights(hang, model)
    if lacking or not isinstance(hang.boxes, int):
        return missing(f"{key}.weight", label, weighed(), lacking, caution=LOADS)
    ends = [
        weight_and_step(hang.boxes, box.kg if box else 0.0, frame.kg if frame else 0.0, system)
        for box, frame in zip(ends_of(model.weight), ends_of(hang.frame), strict=True)
    ]
    steps = tuple(dict.fromkeys(step for _, step in ends))
    value = one_or_both(ends[0][0], ends[1][0]) or ends[0][0]
    return figure(f"{key}.weight", label, value, weighed(steps=steps), caution=LOADS)


def weight_and_step(
    boxes: int, box_kg: float, frame_kg: float, system: System
) -> tuple[Value, str]:
    """What boxes and a frame weigh together, and how that is added up. [kg]"""
    total_kg = total_load_kg([PointLoad(0.0, boxes * box_kg), PointLoad(0.0, frame_kg)])
    text, also = shown(Mass, total_kg, system=system)
    step = f"{boxes} × {box_kg:g} kg + {frame_kg:g} kg = {total_kg:g} kg"
    return Value(text, also, total_kg, "kg"), step
