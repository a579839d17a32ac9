"""What keeps a hang from being judged, in the words of the terminal."""

import pytest

from tests.rider.riders import problems, read

LOADS = "loads: [{what: x, weight: 26 kg}]"
HANGS = [
    (
        "name: W, supports: [], weight in all: 8 kg",
        "3:25 W has 0 supports; write 1 to 12; split a longer hang [need-unclear]",
    ),
    (
        "name: W, supports: [" + ", ".join("{load: 1 kg}" for _ in range(13)) + "]",
        "3:25 W has 13 supports; write 1 to 12; split a longer hang [need-unclear]",
    ),
    (
        "name: W, supports: [{across: 1 m SL, load: 1 kg}]",
        "3:35 support needs both across and depth, or a point; write the one that is missing"
        " [need-unclear]",
    ),
    (
        "name: W, supports: [{point: R1, across: 1 m SL, depth: 1 m US, load: 1 kg}]",
        "3:34 R1 stands beside a spot; write either point, or across and depth [need-unclear]",
    ),
    (
        "name: W, supports: [{point: R1, apex: 7 m, load: 1 kg}]",
        "3:44 R1 stands without a spot; write across and depth too [need-unclear]",
    ),
    (
        "name: W, supports: [{point: R1, load: 1 kg}, {point: r1, load: 1 kg}]",
        "3:25 W names a point twice; write each point once [need-unclear]",
    ),
    (
        "name: W, supports: [{point: R1, load: 1 kg}, {point: R2}]",
        "3:25 W states the load of some supports only; write load at every support, or at none"
        " [need-unclear]",
    ),
    (
        "name: W, supports: [{point: R1, load: 1 kg}], weight in all: 1 kg",
        "3:25 W states loads at its supports beside weights; keep one of them [need-unclear]",
    ),
    (
        "name: W, supports: [{point: R1, load: 1 kg}], hoists: show",
        "3:60 W needs the weight of the show's hoists; write hoists: show together with hoist"
        " weight, or neither [need-unclear]",
    ),
    (
        "name: W, supports: [{point: R1, load: 1 kg}], hoist weight: 52 kg",
        "3:5 W needs the weight of the show's hoists; write hoists: show together with hoist"
        " weight, or neither [need-unclear]",
    ),
    (
        "name: W, supports: [{point: R1, load: 1 kg}], below steel: 1 m",
        "3:65 W stands without a trim; write trim too [need-unclear]",
    ),
    (
        f"name: W, length: 3 m, weight: 8 kg/m, weight in all: 8 kg, supports: [{{}}], {LOADS}",
        "3:59 W tells its own weight twice; keep one of them [need-unclear]",
    ),
    (
        "name: W, weight: 8 kg/m, supports: [{}]",
        "3:5 W needs a length, for a weight is spread over it; write the length of the hang"
        " [need-unclear]",
    ),
    (
        f"name: W, supports: [{{at: 1 m}}, {{at: 2 m}}], {LOADS}",
        "3:5 W needs a length, for a weight is spread over it; write the length of the hang"
        " [need-unclear]",
    ),
    (
        f"name: W, length: 9 m, supports: [{{at: 1 m}}, {{}}], {LOADS}",
        "3:38 W does not say where along it each support is; write at for every support"
        " [need-unclear]",
    ),
    (
        f"name: W, length: 9 m, supports: [{{at: 1 m}}, {{at: 1.005 m}}], {LOADS}",
        "3:38 W has two supports at one place; write where along it each one is [need-unclear]",
    ),
    (
        f"name: W, length: 2 m, supports: [{{at: 1 m}}, {{at: 3 m}}], {LOADS}",
        "3:23 W is shorter than a place on it; count places from the first end [need-unclear]",
    ),
    (
        "name: W, supports: [{}], loads: [{what: x, weight: 1 kg, at: 1 m, from: 1 m, to: 2 m}]",
        "3:67 x needs either at, or both from and to; leave all three out for a load over the whole"
        " length [need-unclear]",
    ),
    (
        "name: W, supports: [{}], loads: [{what: x, weight: 1 kg, from: 2 m}]",
        "3:39 x needs either at, or both from and to; leave all three out for a load over the whole"
        " length [need-unclear]",
    ),
    (
        "name: W, supports: [{}], loads: [{what: x, weight: 1 kg, from: 2 m, to: 1 m}]",
        "3:78 x is not beyond its beginning; write the place nearer to the first end as from"
        " [need-unclear]",
    ),
]


@pytest.mark.parametrize(("hang", "problem"), HANGS)
def test_a_hang_that_cannot_be_judged_is_told_at_its_key(hang: str, problem: str) -> None:
    assert problems(f"act: A\nhangs:\n  - {{{hang}}}\n") == [f"rider.yml:{problem}"]


def test_two_hangs_of_one_name_are_told_at_both() -> None:
    hang = "  - {name: W, supports: [{point: R1, load: 1 kg}]}\n"
    assert problems(f"act: A\nhangs:\n{hang}{hang}") == [
        f"rider.yml:{line}:12 name: 'W' is the name of two hangs; give each a name of its own"
        " [need-unclear]"
        for line in (3, 4)
    ]


def test_a_hang_that_cannot_be_judged_leaves_the_others() -> None:
    rider = read(
        "act: A\nhangs:\n  - {name: V, supports: []}\n"
        "  - {name: W, supports: [{point: R1, load: 1 kg}], trim: 7 m}\n"
    )
    assert rider["parts"] == ["hangs[2]", "hangs[2]"]
    assert [each["title"] for each in rider["rider"]["requirements"]] == ["Hang: W", "Trim of W"]
    assert [mistake["part"] for mistake in rider["mistakes"]] == ["hangs[1]"]
