"""
A house of one's own to start from: a venue with comments that explain, and all that is needed to
check it, edit it and publish it. And a rider to start from.

``housepack new`` writes them.
"""

from collections.abc import Iterable, Mapping
from importlib.metadata import version
from pathlib import Path

from builder.files import package_texts, write_whole
from builder.schemas import RIDER, schemas

VENUE = "venue"
WORKFLOW = ".github/workflows/publish.yml"
KEPT = ".gitkeep"
"""Git keeps no empty folder: a file that nobody sees stands in those that are to be filled."""


def write_house(folder: Path) -> Path:
    """
    Write a house of one's own into a folder that has none of its files, and return its venue.

    Raises
    ------
    FileExistsError
        If one of the files is there already. Nothing is written then.
    """
    write_all(folder, house_files())
    return folder / VENUE


def house_files() -> Mapping[str, str]:
    """Every file of a new house, by its path."""
    ours = package_texts("builder.starter.repository", "")
    told = {name: text.replace("{version}", version("housepack")) for name, text in ours.items()}
    return {
        "README.md": told["README.md"],
        ".gitignore": told["gitignore"],
        WORKFLOW: told["publish.yml"],
        **{f"{VENUE}/{name}": text for name, text in venue_files().items()},
        **{f"{VENUE}/{name}/{KEPT}": "" for name in ("photos", "shows")},
        **{f"schemas/{name}": text for name, text in schemas().items()},
        f"wheels/{KEPT}": "",
    }


def venue_files() -> Mapping[str, str]:
    """The starting venue: one file a department, by name."""
    return package_texts("builder.starter", ".yml")


def write_starter(folder: Path) -> tuple[Path, ...]:
    """
    Write the starting venue alone into a folder that has none of its files.

    Raises
    ------
    FileExistsError
        If one of the files is there already. Nothing is written then.
    """
    texts = venue_files()
    write_all(folder, texts)
    return tuple(folder / name for name in texts)


def write_all(folder: Path, texts: Mapping[str, str]) -> None:
    """
    Write files, none of which may be there.

    Raises
    ------
    FileExistsError
        If one of the files is there already. Nothing is written then.
    """
    there = [name for name in texts if (folder / name).exists()]
    if there:
        raise FileExistsError(
            f"{folder} already holds {some(there)}. Give a folder without them: nothing was"
            " written."
        )
    for name, text in texts.items():
        write_whole(folder / name, text)


def some(names: Iterable[str], most: int = 5) -> str:
    """The first of some names, and how many more there are."""
    first = list(names)
    more = len(first) - most
    return ", ".join(first[:most]) + (f" and {more} more" if more > 0 else "")


def write_starter_rider(file: Path) -> None:
    """
    Write the starting rider.

    Raises
    ------
    FileExistsError
        If the file is there already. Nothing is written then.
    """
    if file.exists():
        raise FileExistsError(f"{file} is there already. Give another name: nothing was written.")
    text = package_texts("builder.starter", "rider.yaml")["rider.yaml"]
    write_whole(file, schema_line(file) + text)


def schema_line(file: Path) -> str:
    """
    The line that names the schema of riders for editors, where a house's schemas are in a folder
    above; nothing where they are not.
    """
    steps = ["", "../", "../../", "../../../"]
    for step, folder in zip(steps, file.resolve().parents, strict=False):
        if (folder / "schemas" / RIDER).is_file():
            return f"# yaml-language-server: $schema={step}schemas/{RIDER}\n"
    return ""
