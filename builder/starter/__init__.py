"""
A venue and a rider to start from: small, whole, with comments that explain.

``housepack new`` writes them.
"""

from pathlib import Path

from builder.files import package_texts, write_whole


def write_starter(folder: Path) -> tuple[Path, ...]:
    """
    Write the starting files into a folder that has none of them.

    Raises
    ------
    FileExistsError
        If one of the files is there already. Nothing is written then.
    """
    texts = package_texts("builder.starter", ".yml")
    there = [name for name in texts if (folder / name).exists()]
    if there:
        raise FileExistsError(
            f"{folder} already holds {', '.join(there)}. Give a folder without them: nothing was"
            " written."
        )
    for name, text in texts.items():
        write_whole(folder / name, text)
    return tuple(folder / name for name in texts)


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
    write_whole(file, package_texts("builder.starter", "rider.yaml")["rider.yaml"])
