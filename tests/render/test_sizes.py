"""How large a picture is."""

from pathlib import Path

from builder.render.sizes import size_of

PHOTO = Path(__file__).parents[2] / "venue" / "photos" / "basin-lane-arch.png"


def test_a_png_tells_its_width_and_height() -> None:
    """
    ISO/IEC 15948, 11.2.2: the header chunk is first; its data begins with width and height, four
    bytes each, most significant first.
    """
    assert size_of(b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x02\x80\x00\x00\x01\xe0") == (
        640,
        480,
    )
    assert size_of(PHOTO.read_bytes())


def test_a_jpeg_tells_them_behind_its_other_segments() -> None:
    """ISO/IEC 10918-1, B.2.2: the frame header holds precision, lines, samples a line."""
    app = b"\xff\xe0\x00\x10JFIF\x00\x01\x01\x00\x00\x01\x00\x01\x00\x00"
    frame = b"\xff\xc2\x00\x11\x08\x01\xe0\x02\x80\x03"
    assert size_of(b"\xff\xd8" + app + frame) == (640, 480)
    assert size_of(b"\xff\xd8" + app) is None


def test_a_drawing_tells_its_box() -> None:
    assert size_of(b'<?xml?>\n<svg width="388.8pt" viewBox="0 0 388.8 1208.3" version="1.1">') == (
        518,
        1611,
    )
    assert size_of(b'<svg width="12mm" viewBox="0 0 900 450">') == (900, 450)
    assert size_of(b"<svg>") is None
