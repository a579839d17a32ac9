"""
The command ``housepack``: parse, call, print, exit. Every other room returns values.

Exit status: 0 done and well; 1 problems, dangers under ``--strict``, or a show that falls short; 2
wrong usage.
"""

import click

from builder.cli.changes import changes
from builder.cli.explain import explain
from builder.cli.fit import fit
from builder.cli.net import Netted, with_details
from builder.cli.phases import phases
from builder.cli.stock import stock
from builder.cli.upgrade import upgrade
from builder.cli.venue import build, check, new, pack, schema, serve


@click.group(cls=Netted, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="housepack")
def main() -> None:
    """
    One checked description of a venue, turned into a searchable tech pack with computed figures.
    """


for command in (
    new,
    check,
    build,
    serve,
    pack,
    schema,
    stock,
    changes,
    fit,
    phases,
    explain,
    upgrade,
):
    main.add_command(with_details(command))
