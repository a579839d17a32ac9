"""
The check and the reader of riders as the browser runs them: compiled from the Python sources when
the site is built.
"""

from functools import cache
from importlib.resources import files

from builder.compiling.packing import without_comments
from builder.compiling.program import compiled_in_two

AT_ONCE = {
    "fit": "builder.fit.interpreter.fit",
    "needs_more": "builder.fit.whole_day.needs_more",
    "is_of_date": "builder.fit.closed.told.is_of_date",
    "gravity": "builder.fit.verdicts.gravity",
    "count_words": "builder.fit.counting.count_words",
    "digits": "builder.fit.wording.digits",
    "asks_for_plans": "builder.rider.asking.rider.asks_for_plans",
    "read_form": "builder.rider.entry.read_form",
    "same_name_words": "builder.rider.same_day.same_name_words",
    "several_dates_words": "builder.rider.same_day.several_dates_words",
    "mistake_words": "builder.rider.entry.mistake_words",
}
"""What pages call, by the name that they call it: what a form needs whose verdicts follow."""
WITH_FILES = {
    "read_tree": "builder.rider.text.document.read_tree",
    "write_rider": "builder.rider.entry.write_rider",
    "plot_drawing": "builder.fit.plots.drawing.plot_drawing",
}
"""What comes with a second script, loaded when a rider file is opened or saved."""
PLANS = (
    "builder.rider.asking.rider.hangs_read",
    "builder.rider.asking.rider.plot_read",
    "builder.rider.asking.rider.clock_read",
    "builder.rider.asking.clock.clock_asked",
    "builder.fit.hangs.plan.hangs_for_all",
    "builder.fit.plots.stage_plot.stage_plot",
    "builder.fit.plots.together.plots_together",
    "builder.fit.plots.chosen.plot_readings",
    "builder.fit.clock.day.the_day",
    "builder.fit.closed.judging.on_their_dates",
    "builder.fit.spaces.judging.fit_in_spaces",
    "builder.fit.arrangements.in_doubt.in_both_states",
    "builder.fit.arrangements.settings.settings_compared",
    "builder.fit.arrangements.as_set.pack_at",
    "builder.fit.needs.contradictions.with_contradictions",
    "builder.fit.needs.by_class.by_class",
    "builder.fit.needs.composed.composed",
    "builder.rider.asking.composed.composed_asked",
    "builder.rider.asking.rider.work_read",
    "builder.fit.work.calls.crew_called",
    "builder.fit.work.calls.task_seen_to",
    "builder.fit.choices.by_ways",
    "builder.fit.power.circuits.look_at_outlets",
    "builder.fit.needs.comparing.told_what_it_is",
    "builder.fit.risers.judging.risers_built",
    "builder.rider.asking.rider.risers_part",
    "builder.fit.power.more.told_of_service",
    "builder.fit.power.more.word_of_outlet",
    "builder.fit.power.more.or_sockets",
    "builder.fit.power.more.alone_on_breakers",
    "builder.rider.asking.power_more.power_read",
)
"""
What reads and judges hang plans, stage plots, crew and the day's clock, and the rules of closures,
of needs that contradict each other or are made of others, of single-phase circuits, of loads that
ask more of their feed than a form holds, of states that nobody knows, of what the house sets and of
several stages come with the second script too: most shows that are typed have none of them, and
most houses have one stage, are closed on no day, know what works and choose no value.
"""
OFFERED = {**AT_ONCE, **WITH_FILES}
GLOBAL_NAME = "housecheck"
SCRIPT = "assets/fit/engine.js"
LATER_SCRIPT = "assets/fit/rider_files.js"
ROOM = "builder"


def source_of(module: str) -> str:
    """The source text of one of our modules."""
    whole = files(ROOM).joinpath(*module.split(".")[1:])
    if whole.is_dir():
        return whole.joinpath("__init__.py").read_text("utf-8")
    return files(ROOM).joinpath(*f"{module.replace('.', '/')}.py".split("/")[1:]).read_text("utf-8")


def runtime() -> str:
    """What both languages have and write differently, as a script, without its comments."""
    return without_comments(files("builder.compiling").joinpath("runtime.js").read_text("utf-8"))


@cache
def engine_scripts() -> tuple[str, str]:
    """
    The script that the page loads at once, and the one that it loads when a file is opened or saved
    or a show comes with a plan.

    Raises
    ------
    NotTranslatable
        If a rule is written outside the part of Python that is translated.
    """
    return compiled_in_two(
        AT_ONCE,
        WITH_FILES,
        held_back=PLANS,
        source_of=source_of,
        runtime=runtime(),
        global_name=GLOBAL_NAME,
        packed=True,
    )
