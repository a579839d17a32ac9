"""
The net at the edge of every command: what still slips through becomes a sentence that names the
file, and asks to report it. ``--details`` tells the rest.
"""

import logging
import sys
import traceback
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import click

from builder.cli.telling import tell
from builder.reading.failing import LOG, program_failed
from builder.reading.problems import Refused
from builder.render.terminal import obeyed_by_no_terminal

AT = "housepack.at"


class Details(logging.Handler):
    """Prints what nets caught, whole."""

    def emit(self, record: logging.LogRecord) -> None:
        """Print one failure with its traceback."""
        if record.exc_info and record.exc_info[1]:
            tell("".join(traceback.format_exception(record.exc_info[1])), err=True)


class Netted(click.Group):
    """A group of commands with a net below all of them."""

    def invoke(self, ctx: click.Context) -> Any:
        """Run a command; nothing but a sentence reaches the terminal where it fails."""
        try:
            return super().invoke(ctx)
        except click.ClickException as failure:
            vars(failure)["message"] = obeyed_by_no_terminal(failure.message)
            raise
        except BrokenPipeError:
            # Whoever reads the output has seen enough; that is no failure.
            raise
        except Refused as refused:
            for problem in refused.problems:
                tell(str(problem), err=True)
        except OSError as failure:
            LOG.debug("The system refused", exc_info=failure)
            tell(refused_by_the_system(failure), err=True)
        except (click.exceptions.Exit, click.Abort):
            raise
        except Exception as failure:
            tell(str(program_failed(worked_at(ctx, failure), failure)), err=True)
        sys.exit(1)


def refused_by_the_system(failure: OSError) -> str:
    """What the system refused, in a sentence that names the file."""
    from builder.files import why_refused

    name = str(failure.filename2 or failure.filename or "A file")
    return f"{name} {why_refused(failure)} [not-written]"


def worked_at(ctx: click.Context, failure: Exception) -> str:
    """The file or folder that a command was at work on."""
    at: click.Context = ctx.meta.get(AT, ctx)
    for name in ("pack_file", "venue", "riders", "rider", "folder", "site"):
        value = at.params.get(name)
        first = value[0] if isinstance(value, tuple) and value else value
        if isinstance(first, Path):
            file = next(iter(getattr(failure, "__notes__", ())), "")
            return str(first / file) if file and name == "venue" else str(first)
    return f"housepack {at.info_name or ''}".strip()


def with_details(command: click.Command) -> click.Command:
    """Give a command, and each command within it, the option --details."""
    for each in within(command):
        each.params.append(
            click.Option(
                ["--details"],
                is_flag=True,
                is_eager=True,
                expose_value=False,
                callback=remember,
                help="Where the program itself fails, print all that helps to mend it.",
            )
        )
    return command


def within(command: click.Command) -> Iterator[click.Command]:
    """A command that does something, or those of a group."""
    if isinstance(command, click.Group):
        for each in command.commands.values():
            yield from within(each)
    else:
        yield command


def remember(ctx: click.Context, _: click.Parameter, wanted: bool) -> None:
    """Remember which command runs, and print details while it does where they are wanted."""
    ctx.meta[AT] = ctx
    if wanted:
        handler, level = Details(), LOG.level
        LOG.addHandler(handler)
        LOG.setLevel(logging.DEBUG)

        def forget() -> None:
            LOG.removeHandler(handler)
            LOG.setLevel(level)

        ctx.find_root().call_on_close(forget)
