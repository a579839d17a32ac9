"""Where a site may stand: a new folder, an empty one, or a site that a build wrote."""

from pathlib import Path

from builder.site.imprint import PACK
from builder.site.manifest import MANIFEST, manifest_of, named

UNWRITTEN = "Nothing was written."


class SiteFailed(Exception):
    """The site could not be built. Says why; the old site is untouched."""


def refuse_to_lose(site: Path, venue: Path | None) -> None:
    """
    Refuse to replace what no build wrote: a slip in the path must not cost someone their files.
    """
    if site.is_symlink():
        raise SiteFailed(f"{site} is a link. Give the folder itself with --to. {UNWRITTEN}")
    for above in site.absolute().parents:
        if above.exists() and not above.is_dir():
            raise SiteFailed(f"{above} is a file, so {site} cannot be in it. {UNWRITTEN}")
    if not site.exists():
        return
    if not site.is_dir():
        raise SiteFailed(f"{site} is a file. Give a folder for the site with --to. {UNWRITTEN}")
    lost = named(site)
    would_lose = f" To replace it would lose {lost}." if lost else ""
    for what, folder in (("folder that you stand in", working_folder()), ("venue", venue)):
        if folder is not None and is_within(folder, site):
            raise SiteFailed(
                f"{site} is or holds the {what}.{would_lose} Give another folder with --to."
                f" {UNWRITTEN}"
            )
    if lost:
        raise SiteFailed(
            f"{site} {why_strange(site)}.{would_lose} Give a new or empty folder with --to, or"
            f" take out what is yours. {UNWRITTEN}"
        )


def why_strange(site: Path) -> str:
    """Why a folder may not be replaced."""
    if manifest_of(site) is not None:
        return "holds what no build wrote there, or what was changed since"
    if (site / PACK).is_file() and (site / "index.html").is_file():
        return f"has no {MANIFEST}, the list of what a build wrote, as older versions left none"
    return "is not a site that a build wrote"


def working_folder() -> Path | None:
    """The folder that the author stands in; None where it is gone."""
    try:
        return Path.cwd()
    except FileNotFoundError:
        return None


def is_within(inner: Path, outer: Path) -> bool:
    """Whether a folder is another or lies in it, by whatever name each is called."""
    resolved = inner.resolve()
    return any(above.exists() and above.samefile(outer) for above in (resolved, *resolved.parents))
