"""The field over an audience against closed forms, its own slow definition and laws."""

import math
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas import directivity, subs
from builder.formulas.air import air_absorption_db_per_m, weighting_db
from builder.formulas.band_lines import Band, octave_members, third_octaves
from builder.formulas.field import Air, Field, field, field_direct, programme_level_db
from builder.formulas.field_blocks import unit_phasors
from builder.formulas.loudspeakers import Loudspeaker, across_response, bearings, upward_response

COVERAGE = ((250.0, 120.0), (1000.0, 100.0), (4000.0, 90.0), (16_000.0, 80.0))
ALL_ROUND = Loudspeaker(x_m=0, y_m=0, z_m=0)
KILOHERTZ = third_octaves(1000, 1000)
C = Air().speed_m_s


def array_of_boxes(y_m: float) -> list[Loudspeaker]:
    """Twelve boxes that hang with growing splay."""
    box = Loudspeaker(
        x_m=0, y_m=y_m, z_m=9, width_m=0.7, height_m=0.28, coverage_deg=COVERAGE, lowest_hz=60
    )
    return [replace(box, z_m=9 - 0.29 * i, elevation_deg=-1 - i - 0.2 * i * i) for i in range(12)]


def rig() -> list[Loudspeaker]:
    """Two arrays, a delayed row of subs, front fills and a delay array."""
    sub = Loudspeaker(
        x_m=1, y_m=0, z_m=0.5, width_m=0.6, height_m=0.6, lowest_hz=30, highest_hz=100, level_db=6
    )
    fill = Loudspeaker(
        x_m=1,
        y_m=0,
        z_m=1,
        coverage_deg=((1000, 100),),
        vertical_coverage_deg=((1000, 60),),
        lowest_hz=100,
        level_db=-10,
    )
    tower = Loudspeaker(
        x_m=40, y_m=12, z_m=6, width_m=0.5, height_m=0.25, lowest_hz=80, delay_ms=115
    )
    row = [replace(sub, y_m=1.2 * (i - 3.5), delay_ms=0.5 * abs(i - 3.5)) for i in range(8)]
    return [
        *array_of_boxes(-8),
        *array_of_boxes(8),
        *row,
        *(replace(fill, y_m=2.0 * i - 5) for i in range(6)),
        tower,
    ]


def scattered_points(count: int) -> np.ndarray:
    """Points over an audience, by a fixed recurrence."""
    share = np.outer(np.arange(1, count + 1), [0.8191725134, 0.6710436067, 0.5497004779]) % 1
    return np.array([3, -25, 1]) + share * np.array([80, 50, 3])


def level_db(
    speakers: list[Loudspeaker], *place_m: float, bands: tuple[Band, ...] = KILOHERTZ
) -> float:
    return float(field(speakers, np.array([place_m], dtype=float), bands=bands).levels_db()[0, 0])


@pytest.mark.source(
    "by hand: -20 lg 10 = -20 dB, and 10 m of ISO 9613-1 absorption at 1 kHz; at 100 m -40 dB and"
    " 100 m of it"
)
@pytest.mark.parametrize("distance_m", [10, 100])
def test_one_box_falls_by_distance_and_air(distance_m: float) -> None:
    expected = -20 * math.log10(distance_m) - distance_m * air_absorption_db_per_m(1000)
    assert level_db([replace(ALL_ROUND, level_db=100)], distance_m, 0, 0) == pytest.approx(
        100 + expected, abs=0.002
    )


@pytest.mark.source(
    "by hand: two equal boxes at equal distance are 6.02 dB louder than one; inverted, nothing is"
    " left"
)
def test_two_boxes_add_as_pressures() -> None:
    left, right = replace(ALL_ROUND, y_m=-2), replace(ALL_ROUND, y_m=2)
    assert level_db([left, right], 20, 0, 0) - level_db([left], 20, 0, 0) == pytest.approx(
        6.02, abs=0.001
    )
    assert level_db([left, replace(right, inverted=True)], 20, 0, 0) < -250


@pytest.mark.source(
    "by hand: eight touching boxes of 0.25 m are a line of 2 m: sin(x)/x with x = pi f L"
    " sin(theta)/c, far away"
)
@pytest.mark.parametrize("elevation_deg", [0, 1, 2, 4, 7])
def test_touching_boxes_are_one_line(elevation_deg: float) -> None:
    far_m, angle = 3000.0, math.radians(elevation_deg)
    boxes = [replace(ALL_ROUND, z_m=0.25 * (i - 3.5), height_m=0.25) for i in range(8)]
    bands = tuple(Band(0, 2) for _ in range(1))
    point = np.array([[far_m * math.cos(angle), 0, far_m * math.sin(angle)]])
    relative = (
        field_direct(boxes, point, bands=bands, each_line=True).energy
        / field_direct([ALL_ROUND], point, bands=bands).energy
    )
    closed = directivity.line_response(np.pi * bands[0].lines_hz * 2 * math.sin(angle) / C)
    absorbed = np.array(
        [10 ** (-far_m * air_absorption_db_per_m(float(f)) / 10) for f in bands[0].lines_hz]
    )
    shares = bands[0].shares * absorbed / (bands[0].shares * absorbed).sum()
    assert math.sqrt(relative[0, 0] / 64) == pytest.approx(
        math.sqrt((shares * closed**2).sum()), abs=2e-3
    )


@pytest.mark.source(
    "far_field_db of the same row, itself checked against the closed form of the array factor; the"
    " middle line of a band is close to its midband"
)
def test_a_delayed_row_radiates_like_its_far_field() -> None:
    places = [1.2 * (i - 3.5) for i in range(8)]
    delays = subs.arc_delays_ms(places, radius_m=6, speed_m_s=C)
    row = [replace(ALL_ROUND, y_m=y, delay_ms=d) for y, d in zip(places, delays, strict=True)]
    band = third_octaves(63, 63, intervals=64)
    for angle_deg in (0.0, 20.0, 50.0):
        far = 5000 * np.array(
            [[math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg)), 0]]
        )
        energy = (
            field(row, far, bands=band).energy / field([ALL_ROUND], far, bands=band).energy / 64
        )
        lines = [
            subs.far_field_db(
                places, delays, frequency_hz=float(f), angle_deg=angle_deg, speed_m_s=C
            )
            for f in band[0].lines_hz
        ]
        expected = sum(
            share * 10 ** (line / 10) for share, line in zip(band[0].shares, lines, strict=True)
        )
        assert 10 * math.log10(energy[0, 0]) == pytest.approx(10 * math.log10(expected), abs=0.05)


@pytest.mark.source(
    "by hand: a stated coverage of 90 degrees is 6 dB down 45 degrees aside of the aim, wherever"
    " the aim is"
)
@given(st.floats(-180, 180), st.sampled_from([-45.0, 45.0]))
def test_the_edge_of_stated_coverage(azimuth_deg: float, aside_deg: float) -> None:
    box = replace(ALL_ROUND, azimuth_deg=azimuth_deg, coverage_deg=((1000, 90),))
    ahead, aside = (
        level_db(
            [box],
            10 * math.cos(math.radians(azimuth_deg + turn)),
            10 * math.sin(math.radians(azimuth_deg + turn)),
            0,
        )
        for turn in (0, aside_deg)
    )
    assert aside - ahead == pytest.approx(-6.02, abs=0.02)


@pytest.mark.source(
    "by hand: a box at (1, 2, 3) aimed along +y and 30 degrees down sees (1, 12, 3 - 10 tan 30)"
    " straight ahead, (2, 2, 3) at its right"
)
def test_bearings_by_hand() -> None:
    box = Loudspeaker(x_m=1, y_m=2, z_m=3, azimuth_deg=90, elevation_deg=-30)
    seen = bearings(
        [box], np.array([[1, 12, 3 - 10 * math.tan(math.radians(30))], [2, 2, 3], [1, 2, 5]])
    )
    assert seen.distance_m[0] == pytest.approx([10 / math.cos(math.radians(30)), 1, 2])
    assert np.degrees(seen.aside_rad[0]) == pytest.approx([0, 90, 180], abs=1e-6)
    assert np.degrees(seen.up_rad[0]) == pytest.approx([0, 0, 60], abs=1e-6)


@pytest.mark.source(
    "scipy 1.17.1: piston and line at -6 dB: k a sin = 2.2151 and k h sin / 2 = 1.8955"
)
def test_patterns_of_a_box_without_stated_coverage() -> None:
    box = replace(ALL_ROUND, width_m=0.6, height_m=0.3)
    wavenumber = math.tau * 4000 / C
    across, upward = math.asin(2.2151 / (wavenumber * 0.3)), math.asin(1.8955 / (wavenumber * 0.15))
    assert across_response(
        box, np.array([0, across]), frequency_hz=4000, speed_m_s=C
    ) == pytest.approx([1, 0.5], abs=1e-4)
    assert upward_response(
        box, np.array([0, -upward]), frequency_hz=4000, speed_m_s=C
    ) == pytest.approx([1, 0.5], abs=1e-4)


@pytest.mark.source(
    "the definition in double precision, line by line (field_direct); 0.1 dB wherever a band is"
    " within 40 dB of its greatest level"
)
def test_the_fast_field_is_its_definition() -> None:
    points, speakers = scattered_points(300), rig()
    for air in (Air(), Air(temperature_c=35, humidity_percent=15)):
        slow = field_direct(speakers, points, air=air)
        fast = field(speakers, points, air=air)
        loud = slow.energy > slow.energy.max(axis=0) * 1e-4
        ratio_db = 10 * np.log10(
            fast.energy[loud & (slow.energy > 0)] / slow.energy[loud & (slow.energy > 0)]
        )
        assert np.abs(ratio_db).max() < 0.1
        assert np.abs(fast.programme_db() - slow.programme_db()).max() < 0.02


@pytest.mark.source(
    "the same sum in double precision; 0.005 dB wherever a third octave is within 40 dB of its"
    " greatest level"
)
def test_single_precision_is_close_to_double() -> None:
    points, speakers = scattered_points(2000), rig()
    fine, coarse = field(speakers, points), field(speakers, points, precision="single")
    loud = fine.energy > fine.energy.max(axis=0) * 1e-4
    assert loud.mean() > 0.9
    assert np.abs(10 * np.log10(coarse.energy[loud] / fine.energy[loud])).max() < 0.005


@pytest.mark.source(
    "the definition in double precision (field_direct), for bands whose lines do not double from"
    " octave to octave"
)
def test_any_choice_of_lines_is_its_definition() -> None:
    points, speakers = scattered_points(20), rig()
    bands = tuple(Band(k, n) for k, n in ((-12, 3), (-9, 7), (-6, 2), (0, 4), (3, 4), (9, 8)))
    slow, fast = field_direct(speakers, points, bands=bands), field(speakers, points, bands=bands)
    assert 10 * np.log10(fast.energy / slow.energy) == pytest.approx(0, abs=0.1)


@pytest.mark.source("numpy's complex exponential")
def test_phasors_from_a_table() -> None:
    turns = np.linspace(-5000, 5000, 100_003)
    assert np.abs(unit_phasors(turns) - np.exp(2j * np.pi * turns)).max() < 2e-11
    turns = np.linspace(-1, 1, 10_007)
    assert np.abs(unit_phasors(turns) - np.exp(2j * np.pi * turns)).max() < 3e-13


@pytest.mark.source(
    "IEC 61260-1: an octave is three third octaves; 366 lines by 3, 5, 9 and 17 below 55, 140, 450"
    " Hz and above"
)
def test_lines_of_ten_octaves() -> None:
    bands = third_octaves()
    assert sum(len(band.lines_hz) for band in bands) == 366
    assert octave_members(bands, octave_hz=1000) == (15, 16, 17)
    for lower, upper in pairwise(bands):
        assert lower.lines_hz[-1] == pytest.approx(upper.lines_hz[0])
        assert abs(upper.midband_hz / upper.exact_midband_hz - 1) < 0.0121
        assert upper.shares.sum() == pytest.approx(1)


@pytest.mark.source(
    "IEC 61672-1:2013, annex E: pink noise of 0 dB in each third octave, each weighted at its exact"
    " midband"
)
def test_weighted_programme_level() -> None:
    bands = third_octaves(100, 5000)
    flat = Field(bands, np.ones((1, len(bands))))
    expected = 10 * math.log10(
        sum(10 ** (weighting_db(band.exact_midband_hz, "A") / 10) for band in bands)
    )
    assert programme_level_db(flat)[0] == pytest.approx(expected)
    assert flat.programme_db("Z")[0] == pytest.approx(10 * math.log10(len(bands)))
    assert flat.octave_db(1000)[0] == pytest.approx(4.77, abs=0.005)


@pytest.mark.law
@given(st.floats(-50, 50), st.floats(-30, 30))
@settings(max_examples=20)
def test_later_is_no_quieter(shift_ms: float, louder_db: float) -> None:
    points, speakers = scattered_points(12), rig()[::5]
    plain = field(speakers, points)
    shifted = field([replace(s, delay_ms=s.delay_ms + shift_ms) for s in speakers], points)
    raised = field([replace(s, level_db=s.level_db + louder_db) for s in speakers], points)
    loud = plain.energy > plain.energy.max() * 1e-8
    assert 10 * np.log10(shifted.energy[loud] / plain.energy[loud]) == pytest.approx(0, abs=1e-5)
    assert 10 * np.log10(raised.energy[loud] / plain.energy[loud]) == pytest.approx(
        louder_db, abs=1e-6
    )


@pytest.mark.law
@given(st.floats(2, 60), st.floats(-30, 30), st.floats(0, 5))
@settings(max_examples=30)
def test_a_symmetric_house_has_a_symmetric_field(x_m: float, y_m: float, z_m: float) -> None:
    speakers = [*array_of_boxes(-8), *array_of_boxes(8)]
    here, there = field(speakers, np.array([[x_m, y_m, z_m], [x_m, -y_m, z_m]])).energy
    assert np.sqrt(here) == pytest.approx(np.sqrt(there), abs=1e-9)


@pytest.mark.law
@given(
    st.lists(st.tuples(st.floats(0, 5), st.floats(-5, 5), st.booleans()), min_size=2, max_size=5)
)
@settings(max_examples=20)
def test_fields_superpose(places: list[tuple[float, float, bool]]) -> None:
    """
    The cross term of two sets of boxes is the same from sum and difference: E(a + b) + E(a - b) = 2
    E(a) + 2 E(b).
    """
    boxes = [Loudspeaker(x_m=x, y_m=y, z_m=3, inverted=flip) for x, y, flip in places]
    a, b = boxes[:1], boxes[1:]
    minus_b = [replace(box, inverted=not box.inverted) for box in b]
    points = scattered_points(10)
    together, apart, alone_a, alone_b = (
        field(s, points, bands=KILOHERTZ).energy for s in ([*a, *b], [*a, *minus_b], a, b)
    )
    assert together + apart == pytest.approx(2 * alone_a + 2 * alone_b, rel=1e-9)


@pytest.mark.law
def test_neither_threads_nor_neighbours_change_a_byte() -> None:
    points, speakers = scattered_points(700), rig()
    one, two = field(speakers, points, workers=1), field(speakers, points, workers=2)
    assert one.energy.tobytes() == two.energy.tobytes()
    alone = field(speakers, points[300:310])
    assert alone.levels_db() == pytest.approx(one.levels_db()[300:310], abs=1e-6)


@pytest.mark.law
def test_a_band_that_nothing_plays_has_no_level() -> None:
    found = field([replace(ALL_ROUND, lowest_hz=100, highest_hz=1000)], np.array([[5.0, 0, 0]]))
    silent = np.isneginf(found.levels_db()[0])
    assert [band.index for band, none in zip(found.bands, silent, strict=True) if not none] == list(
        range(-9, 1)
    )
    assert field([ALL_ROUND], np.zeros((0, 3))).energy.shape == (0, 30)


@pytest.mark.law
def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="speakers must hold at least one box, got none"):
        field([], np.zeros((1, 3)))
    with pytest.raises(ValueError, match=r"points_m must have three columns, got shape \(1, 2\)"):
        field([ALL_ROUND], np.zeros((1, 2)))
    with pytest.raises(ValueError, match="workers must be at least 1, got 0"):
        field([ALL_ROUND], np.zeros((1, 3)), workers=0)
    with pytest.raises(ValueError, match="level_db must be a finite number, got nan"):
        replace(ALL_ROUND, level_db=math.nan)
    with pytest.raises(ValueError, match="highest_hz must be above lowest_hz 100, got 50"):
        replace(ALL_ROUND, lowest_hz=100, highest_hz=50)
    with pytest.raises(
        ValueError, match="octave_hz must be an octave that all bands cover, got 1000"
    ):
        octave_members(KILOHERTZ, octave_hz=1000)
    with pytest.raises(ValueError, match="humidity_percent must be 0 to 100, got 120"):
        field([ALL_ROUND], np.zeros((1, 3)), air=Air(humidity_percent=120))


@pytest.mark.source(
    "by hand, the trapezium rule: pink noise has energy as 1/f, and the two ends of a band stand"
    " for half a step"
)
def test_the_ends_of_a_band_stand_for_half_a_step() -> None:
    lower, middle, upper = Band(0, 2).lines_hz
    first, second, third = Band(0, 2).shares
    assert first / second == pytest.approx(middle / (2 * lower))
    assert third / second == pytest.approx(middle / (2 * upper))


@pytest.mark.law
def test_a_box_without_sizes_aims_along_the_first_axis_and_sounds_alike_all_round() -> None:
    ahead, *round_about = (
        level_db([ALL_ROUND], *place_m) for place_m in ((9, 0, 0), (0, 9, 0), (-9, 0, 0), (0, 0, 9))
    )
    assert round_about == [pytest.approx(ahead)] * 3
    straight = bearings([ALL_ROUND], np.array([[9.0, 0.0, 0.0]]))
    assert (straight.aside_rad.item(), straight.up_rad.item()) == (0, 0)


@pytest.mark.law
def test_a_point_straight_up_from_the_aim_is_a_quarter_up_however_numbers_round() -> None:
    for elevation_deg in range(-90, 91):
        up = math.radians(elevation_deg)
        box = replace(ALL_ROUND, elevation_deg=elevation_deg)
        place_m = np.array([[-7.7 * math.sin(up), 0.0, 7.7 * math.cos(up)]])
        assert bearings([box], place_m).up_rad.item() == pytest.approx(math.pi / 2, abs=1e-6)
