"""The one way to the terminal: nothing that it would obey gets there but our own colours."""

from collections.abc import Callable

import click

from builder.render.terminal import json_for_a_terminal, obeyed_by_no_terminal


def tell(
    text: str,
    *,
    err: bool = False,
    nl: bool = True,
    painted: Callable[[str], str] = str,
) -> None:
    """Print text, and colour it with ``painted`` once it is harmless."""
    click.echo(painted(obeyed_by_no_terminal(text)), err=err, nl=nl)


def tell_json(text: str, *, nl: bool = True) -> None:
    """Print JSON."""
    click.echo(json_for_a_terminal(text), nl=nl)


def tell_in(form: str, text: str, *, painted: Callable[[str], str] = str) -> None:
    """Print a whole answer in the form asked for; only plain text is coloured."""
    if form == "json":
        tell_json(text, nl=False)
    else:
        tell(text, nl=False, painted=painted if form == "text" else str)
