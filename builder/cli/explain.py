"""``housepack explain``: a problem, a finding or a key in words, without a network."""

import click

from builder.cli.telling import tell


@click.command()
@click.argument("words", nargs=-1, required=True, metavar="CODE|KEY")
def explain(words: tuple[str, ...]) -> None:
    """
    Tell what a problem, a finding or a key means.

    A code is what stands in square brackets behind a message, such as unit-missing. A key is told
    with its file, its meaning, what may be written, and an example: clear_height, or decks.name
    where many lines have one of that name. A file (stage.yml) is told with its keys, and what a
    rider may ask for (stage width) with the answer it gets.
    """
    from builder.explaining.answer import explained, near
    from builder.explaining.examples import examples_in
    from builder.files import example_files
    from builder.render.terminal import folded
    from builder.site.guides import guide_text

    word = " ".join(words).strip("[]")
    problems = guide_text("problems.md")
    told = explained(word, problems, examples_in(example_files()))
    if not told:
        alike = ", ".join(near(word, problems))
        offer = f" Near it: {alike}." if alike else ""
        raise click.UsageError(f"Nothing here is called '{word}'.{offer}")
    for number, paragraph in enumerate(told):
        indent = " " * paragraph.indent
        if number and not paragraph.indent:
            tell("")
        lines = [f"{indent}{paragraph.text}"]
        if not paragraph.is_example:
            lines = folded(paragraph.text, indent)
        for line in lines:
            tell(line)
