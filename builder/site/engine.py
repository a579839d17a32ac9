"""
The check and the reader of riders as the browser runs them: compiled from the Python sources when
the site is built.
"""

import re
from functools import cache
from importlib.resources import files

from builder.compiling.program import compiled

OFFERED = {
    "fit": "builder.fit.interpreter.fit",
    "gravity": "builder.fit.verdicts.gravity",
    "digits": "builder.fit.wording.digits",
    "rectangle": "builder.formulas.rectangles.rectangle",
    "corners_of": "builder.formulas.rectangles.corners_of",
    "meets": "builder.formulas.rectangles.meets",
    "box_around": "builder.formulas.polygons.box_around",
    "read_tree": "builder.rider.text.document.read_tree",
    "read_form": "builder.rider.entry.read_form",
    "write_rider": "builder.rider.entry.write_rider",
    "mistake_words": "builder.rider.entry.mistake_words",
}
"""What pages call, by the name that they call it."""
GLOBAL_NAME = "housecheck"
SCRIPT = "assets/fit/engine.js"
ROOM = "builder"


def source_of(module: str) -> str:
    """The source text of one of our modules."""
    whole = files(ROOM).joinpath(*module.split(".")[1:])
    if whole.is_dir():
        return whole.joinpath("__init__.py").read_text("utf-8")
    return files(ROOM).joinpath(*f"{module.replace('.', '/')}.py".split("/")[1:]).read_text("utf-8")


def runtime() -> str:
    """What both languages have and write differently, as a script, without its comments."""
    text = files("builder.compiling").joinpath("runtime.js").read_text("utf-8")
    return re.sub(r"^ *//.*\n", "", text, flags=re.MULTILINE)


@cache
def engine_script() -> str:
    """
    The script that pages load.

    Raises
    ------
    NotTranslatable
        If a rule is written outside the part of Python that is translated.
    """
    return compiled(
        OFFERED, source_of=source_of, runtime=runtime(), global_name=GLOBAL_NAME, packed=True
    )
