"""
Design vehicles as two standards describe them. A real truck has its own sizes: write those where
they are known.
"""

from builder.formulas.cite import cites
from builder.formulas.sources import AASHTO_GREEN_BOOK
from builder.formulas.tractrix import Vehicle

FT_M = 0.3048


def _american(
    name: str,
    lengths_ft: tuple[float, float, float, float],
    trailer_ft: float = 0.0,
    trailer_front_ft: float = 0.0,
) -> Vehicle:
    width, wheelbase, front, rear = (length * FT_M for length in lengths_ft)
    return Vehicle(
        name, width, wheelbase, front, rear, trailer_ft * FT_M, 0.0, trailer_front_ft * FT_M
    )


CENTRE_RADIUS_M = {
    "P": 21 * FT_M,
    "SU-30": 38 * FT_M,
    "WB-40": 36 * FT_M,
    "WB-62": 41 * FT_M,
    "WB-67": 41 * FT_M,
}
"""Least centreline turning radius of the American design vehicles. [m]"""

VEHICLES: tuple[Vehicle, ...] = (
    _american("P", (7, 11, 3, 5)),
    _american("SU-30", (8, 20, 4, 6)),
    _american("WB-40", (8, 12.5, 3, 4.5), 25.5, 3),
    _american("WB-62", (8.5, 19.5, 4, 4.5), 41, 2.5),
    _american("WB-67", (8.5, 19.5, 4, 4.5), 45.5, 3),
    Vehicle("European articulated, 16.5 m", 2.55, 3.70, 1.45, 4.0, 8.0, 0.65, 1.59),
)
"""
Car, single unit, and articulated trucks of the Green Book (tables 2-1 and 2-2), and a truck at the
limits of Directive 96/53/EC: 16.50 m long,
12.00 m from kingpin to rear. Wheelbases, overhangs and centreline radii are from memory, and so is
where the European truck's axles are; with them the inside radii that are published for P, SU-30,
WB-40 and WB-62 come out to 0.1 ft.
"""


@cites(AASHTO_GREEN_BOOK, "tables 2-1 and 2-2, from memory", equation="by name")
def vehicle_named(name: str) -> Vehicle:
    """
    A design vehicle by its name.

    Parameters
    ----------
    name
        As in ``VEHICLES``.

    Returns
    -------
    Vehicle
        Its sizes. [m]

    Raises
    ------
    ValueError
        If there is none of that name.
    """
    for vehicle in VEHICLES:
        if vehicle.name == name:
            return vehicle
    raise ValueError(
        f"name must be one of {', '.join(vehicle.name for vehicle in VEHICLES)}, got {name!r}"
    )


@cites(
    AASHTO_GREEN_BOOK,
    "tables 2-1 and 2-2, overall length, from memory",
    equation="front overhang + wheelbase - kingpin ahead + trailer wheelbase + rear overhang",
)
def overall_length_m(vehicle: Vehicle) -> float:
    """
    Length over all of a vehicle in line.

    Parameters
    ----------
    vehicle
        Its sizes.

    Returns
    -------
    float
        Length. [m]
    """
    to_rear_axle = (
        vehicle.wheelbase_m - vehicle.kingpin_ahead_m + vehicle.trailer_m
        if vehicle.trailer_m
        else vehicle.wheelbase_m
    )
    return vehicle.front_overhang_m + to_rear_axle + vehicle.rear_overhang_m
