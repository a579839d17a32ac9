"""
Where the guides for a pack's visitors are: in a checkout in ``docs/pack/``, in an installed package
beside the code. What the crew and developers read stands on the project's own site.
"""

from pathlib import Path

PACKAGE = Path(__file__).resolve().parents[1]
PLACES = (PACKAGE / "guides" / "pack", PACKAGE.parent / "docs" / "pack")


def guides_folder(places: tuple[Path, ...] = PLACES) -> Path:
    """
    The folder of the guides.

    Raises
    ------
    FileNotFoundError
        If there is none; an installation without its guides is broken and should say so.
    """
    for place in places:
        if place.is_dir():
            return place
    raise FileNotFoundError(
        f"no guides in {' or '.join(str(place) for place in places)}; install housepack again"
    )


def guide_text(name: str) -> str:
    """
    The text of a guide for the crew, such as ``problems.md``.

    Raises
    ------
    FileNotFoundError
        If it is not there; an installation without its guides is broken and should say so.
    """
    return (guides_folder().parent / name).read_text(encoding="utf-8")


def guide_navigation(paths: list[str]) -> list[object]:
    """
    Guides as the generator's navigation: those at the top first, then one part for each folder.

    Titles are the guides' own.
    """
    folders: dict[str, list[object]] = {}
    for path in sorted(paths):
        folder, _, _ = path.rpartition("/")
        folders.setdefault(folder, []).append(path)
    top = folders.pop("", [])
    return [
        *top,
        *(
            {folder.rpartition("/")[2].replace("-", " ").capitalize(): entries}
            for folder, entries in folders.items()
        ),
    ]
