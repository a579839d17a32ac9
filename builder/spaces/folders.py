"""Which of a venue's files belong to which space, and what is wrong with the folders."""

from collections.abc import Iterator, Mapping, Sequence, Set

from builder.departments.house.description import House, Space
from builder.reading.addresses import address
from builder.reading.problems import Problem, Where
from builder.registry import DEPARTMENTS, HOUSE

FOLDER = "spaces"
NEEDED = "stage"
"""The file that makes a folder a space: there is no space without a stage."""
OWN = frozenset({"stage", "rigging", "flying"})
"""Departments that only a space has, never the whole house."""
SHARED = frozenset({HOUSE.key})
"""Departments that only the whole house has."""


def own_texts(texts: Mapping[str, str]) -> Mapping[str, Mapping[str, str]]:
    """The texts of each folder under ``spaces/``, by the name of the file there."""
    found: dict[str, dict[str, str]] = {}
    for path, text in texts.items():
        if path.startswith(f"{FOLDER}/"):
            folder, _, file = path.removeprefix(f"{FOLDER}/").partition("/")
            found.setdefault(folder, {})[file] = text
    return found


def shared_texts(texts: Mapping[str, str]) -> Mapping[str, str]:
    """The texts beside ``house.yml``."""
    return {path: text for path, text in texts.items() if not path.startswith(f"{FOLDER}/")}


def path_in(folder: str, file: str) -> str:
    """A file of a space as it is called within the venue's folder."""
    return f"{FOLDER}/{folder}/{file}"


def folder_of(space: Space) -> str:
    """The folder of a space: the one it names, else its name in small letters with hyphens."""
    return space.folder or address(space.name)


def folder_problems(house: House | None, texts: Mapping[str, str]) -> Iterator[Problem]:
    """
    Spaces without a folder or a stage, folders of no space, and files in the wrong place. Where the
    house could not be read, only what its own file does not tell.
    """
    own = own_texts(texts)
    for folder, files in own.items():
        yield from misplaced(folder, files)
    if house is None:
        return
    yield from nameless(house.spaces, own)
    named = [folder_of(space) for space in house.spaces]
    for space in house.spaces:
        yield from without_stage(space, own)
    for folder in own:
        if folder not in named:
            yield nobodys(folder, house)
    if house.spaces:
        yield from beside_the_house(shared_texts(texts))


def nameless(spaces: Sequence[Space], own: Mapping[str, object]) -> Iterator[Problem]:
    """Spaces whose folder cannot be one: it is no address, is a department's, or another's."""
    del own
    taken: dict[str, Space] = {}
    departments = {department.key for department in DEPARTMENTS}
    for space in spaces:
        folder = folder_of(space)
        key = "folder" if space.folder else "name"
        where, value = space.where(key), str(getattr(space, key))
        if address(folder) != folder:
            advice = f"call the folder {FOLDER}/{address(folder)}, and write that here"
            reason = "is no name for a folder of a space: small letters, digits and hyphens"
            yield Problem(where, f"spaces.{key}", value, reason, "space-folder", advice)
        elif folder in departments:
            reason = f"would be the folder {FOLDER}/{folder}, and {folder} is a department"
            advice = "write another name under 'folder:'"
            yield Problem(where, f"spaces.{key}", value, reason, "space-folder", advice)
        elif folder in taken:
            reason = f"has the folder {FOLDER}/{folder}, which is of {taken[folder].name}"
            advice = "give each its own folder"
            yield Problem(where, f"spaces.{key}", value, reason, "space-folder", advice)
        taken.setdefault(folder, space)


def without_stage(space: Space, own: Mapping[str, Mapping[str, str]]) -> Iterator[Problem]:
    """A space that nothing is described of."""
    folder = folder_of(space)
    if f"{NEEDED}.yml" not in own.get(folder, {}):
        file = path_in(folder, f"{NEEDED}.yml")
        yield Problem(
            space.where("name"),
            "spaces.name",
            space.name,
            f"is a space without a stage: {file} is missing",
            "space-without-stage",
            f"write {file}, or take the space out here",
        )


def nobodys(folder: str, house: House) -> Problem:
    """The problem with a folder that no space has."""
    names = ", ".join(folder_of(space) for space in house.spaces)
    advice = f"known folders: {names}" if names else "write the space under 'spaces:' in house.yml"
    return Problem(
        Where(f"{FOLDER}/{folder}"),
        "",
        "",
        "is the folder of no space that house.yml names",
        "space-unknown",
        advice,
    )


def misplaced(folder: str, files: Mapping[str, str]) -> Iterator[Problem]:
    """Files in the folder of a space that are no file of a space."""
    known = [f"{each.key}.yml" for each in DEPARTMENTS if each.key not in SHARED]
    for file in files:
        if file in (f"{key}.yml" for key in SHARED) or file == "log.yml":
            reason, code = "is shared by all spaces, and stands beside house.yml", "space-file"
            advice = "move what is of this space there, with 'spaces:' on the line"
        elif file not in known:
            reason, code = "is not a file of any department", "file-unknown"
            advice = f"known: {', '.join(known)}"
        else:
            continue
        yield Problem(Where(path_in(folder, file)), "", "", reason, code, advice)


def beside_the_house(texts: Mapping[str, str]) -> Iterator[Problem]:
    """Files beside ``house.yml`` that only a space can have."""
    for key in sorted(OWN):
        if f"{key}.yml" in texts:
            reason = "is of one space, and this house has several"
            advice = (
                f"move it into the folder of its space, such as {path_in('studio', f'{key}.yml')}"
            )
            yield Problem(Where(f"{key}.yml"), "", "", reason, "space-file", advice)


def names_of(house: House) -> Set[str]:
    """The names of a house's spaces."""
    return {space.name for space in house.spaces}
