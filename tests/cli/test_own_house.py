"""
A house of one's own publishes: what ``housepack new`` writes is checked and built by its own
workflow, from the wheel, in an environment that holds nothing else of ours, far from this checkout.
"""

import os
import subprocess
import sys
from collections.abc import Iterator
from importlib.metadata import Distribution, distribution
from pathlib import Path
from typing import Any
from zipfile import ZipFile

import pytest
import yaml
from packaging.requirements import Requirement

from builder.starter import KEPT, WORKFLOW, house_files

SHOW = "act: Sallow Kestrel\nplays: 2026-03-07\n"
ROOT = Path(__file__).parent.parent.parent


def needed(name: str, extras: frozenset[str] = frozenset()) -> Iterator[Distribution]:
    """A distribution that is installed here, and all that it says it needs, with its extras."""
    found = distribution(name)
    yield found
    for line in found.requires or ():
        wanted = Requirement(line)
        holds = [extra for extra in ("", *extras) if wanted_with(wanted, extra)]
        if holds:
            yield from needed(wanted.name, frozenset(wanted.extras))


def wanted_with(wanted: Requirement, extra: str) -> bool:
    """Whether a requirement holds here, with one extra asked for."""
    return wanted.marker is None or wanted.marker.evaluate({"extra": extra})


def lend(found: Distribution, packages: Path) -> None:
    """Let an environment see a distribution that is installed here, and nothing beside it."""
    tops = {
        file.parts[0] for file in found.files or () if file.parts[0] not in ("..", "__pycache__")
    }
    for top in sorted(tops):
        link = packages / top
        if not link.exists():
            link.symlink_to(Path(str(found.locate_file(top))))


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel of this checkout."""
    folder = tmp_path_factory.mktemp("dist")
    words = ["-m", "pip", "wheel", "--quiet", "--no-deps", "--no-build-isolation"]
    subprocess.run(
        [sys.executable, *words, "--disable-pip-version-check", "-w", folder, ROOT],
        check=True,
        env={**os.environ, "PIP_NO_INDEX": "1"},
    )
    (made,) = folder.glob("*.whl")
    return made


@pytest.fixture(scope="module")
def clean(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """
    The variables of a clean environment: a new Python with pip and with what the wheel says it
    needs, and nothing else.
    """
    folder = tmp_path_factory.mktemp("machine")
    subprocess.run([sys.executable, "-m", "venv", "--without-pip", folder / "python"], check=True)
    (packages,) = (folder / "python" / "lib").glob("python*/site-packages")
    wanted = [line for line in requirements(wheel) if wanted_with(line, "")]
    for requirement in (*wanted, Requirement("pip")):
        for found in needed(requirement.name, frozenset(requirement.extras)):
            lend(found, packages)
    path = f"{folder / 'python' / 'bin'}:/usr/bin:/bin"
    return {"PATH": path, "HOME": str(folder), "PIP_NO_INDEX": "1", "LANG": "C.UTF-8"}


def requirements(wheel: Path) -> list[Requirement]:
    """What a wheel says it needs, with its extras unasked for."""
    with ZipFile(wheel) as opened:
        (name,) = [name for name in opened.namelist() if name.endswith(".dist-info/METADATA")]
        text = opened.read(name).decode()
    lines = [line for line in text.splitlines() if line.startswith("Requires-Dist: ")]
    return [Requirement(line.removeprefix("Requires-Dist: ")) for line in lines]


def shell(line: str, folder: Path, environment: dict[str, str]) -> str:
    """What a command prints in a folder; it must be well."""
    done = subprocess.run(
        ["bash", "-euo", "pipefail", "-c", line],
        check=False,
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, f"{line}\n{done.stdout}\n{done.stderr}"
    return done.stdout


def workflow(folder: Path) -> dict[str, Any]:
    """A house's workflow."""
    text = (folder / WORKFLOW).read_text(encoding="utf-8")
    # Plain text all through, so that the key `on` stays a word.
    read: dict[str, Any] = yaml.load(text, Loader=yaml.BaseLoader)  # noqa: S506
    return read


@pytest.fixture(scope="module")
def house(
    wheel: Path, clean: dict[str, str], tmp_path_factory: pytest.TempPathFactory
) -> tuple[Path, list[str]]:
    """
    A house that the wheel wrote and that its own workflow built, with what each step printed.
    """
    folder = tmp_path_factory.mktemp("far away") / "our house"
    shell(f"python -m pip install --quiet {wheel}", folder.parent, clean)
    shell("housepack new 'our house'", folder.parent, clean)
    (folder / "wheels" / wheel.name).write_bytes(wheel.read_bytes())
    (folder / "venue" / "shows" / "act.yml").write_text(SHOW, encoding="utf-8")
    written = workflow(folder)
    steps = [step["run"] for step in written["jobs"]["site"]["steps"] if "run" in step]
    return folder, [shell(line, folder, {**clean, **written["env"]}) for line in steps]


def test_a_house_is_checked_and_built_by_its_own_workflow(house: tuple[Path, list[str]]) -> None:
    folder, (_, checked, built) = house
    assert "My venue, revision 1: no problems" in checked
    assert "Wrote the site to site." in built
    assert "My venue" in (folder / "site" / "index.html").read_text(encoding="utf-8")
    assert (folder / "site" / "pack.json").is_file()
    assert (folder / "site" / "read-a-pack.html").is_file(), "the guides come with it"


def test_a_house_is_told_what_a_message_and_a_key_mean_without_a_network(
    house: tuple[Path, list[str]], clean: dict[str, str]
) -> None:
    folder, _ = house
    assert "unit-missing: a problem" in shell("housepack explain unit-missing", folder, clean)
    assert "clear_height: 9.1 m" in shell("housepack explain clear_height", folder, clean)


def test_what_is_published_is_what_was_built(house: tuple[Path, list[str]]) -> None:
    folder, _ = house
    steps = workflow(folder)["jobs"]["site"]["steps"]
    (upload,) = [step for step in steps if "upload-pages-artifact" in step.get("uses", "")]
    assert (folder / upload["with"]["path"] / "index.html").is_file()


def test_one_line_says_where_the_program_comes_from(wheel: Path) -> None:
    text = house_files()[WORKFLOW]
    lines = [line for line in text.splitlines() if not line.strip().startswith("#")]
    (line,) = [line for line in lines if "housepack-" in line]
    assert line == f"  HOUSEPACK: wheels/{wheel.name}"
    assert sum("HOUSEPACK" in line for line in lines) == 2, "said once, and used once"


def test_a_show_is_kept_out_of_a_houses_repository_and_out_of_its_site(
    house: tuple[Path, list[str]], clean: dict[str, str]
) -> None:
    folder, (_, checked, _) = house
    assert "Sallow Kestrel" in checked
    published = [path.read_bytes() for path in (folder / "site").rglob("*") if path.is_file()]
    assert [text for text in published if b"Sallow Kestrel" in text] == []
    shell("git init --quiet . && git add --all", folder, clean)
    kept = shell("git ls-files", folder, clean).splitlines()
    assert f"venue/shows/{KEPT}" in kept
    assert f"wheels/{KEPT}" in kept
    assert [name for name in kept if "act.yml" in name or name.startswith("site/")] == []
    assert "venue/house.yml" in kept
    assert "schemas/house.json" in kept


def test_a_house_holds_nothing_of_ours() -> None:
    texts = house_files()
    folders = {name.partition("/")[0] for name in texts}
    assert folders == {".github", ".gitignore", "README.md", "schemas", "venue", "wheels"}
    for name, text in texts.items():
        assert "Layhouse" not in text, name
        assert "pytest" not in text, name
        assert "make test" not in text, name


def test_every_file_of_a_new_venue_names_its_schema_for_editors() -> None:
    texts = house_files()
    for name, text in texts.items():
        if name.startswith("venue/") and name.endswith(".yml"):
            schema = name.removeprefix("venue/").replace(".yml", ".json")
            assert text.splitlines()[0] == f"# yaml-language-server: $schema=../schemas/{schema}"
            assert f"schemas/{schema}" in texts


def test_a_house_is_never_written_over(tmp_path: Path, clean: dict[str, str]) -> None:
    (tmp_path / "README.md").write_text("Mine.\n", encoding="utf-8")
    said = subprocess.run(
        ["housepack", "new", "."],
        check=False,
        cwd=tmp_path,
        env=clean,
        capture_output=True,
        text=True,
    )
    assert said.returncode == 2
    assert "already holds README.md" in said.stderr
    assert [path.name for path in tmp_path.iterdir()] == ["README.md"]
