"""
Names that are markup, script or addresses elsewhere, in a whole site: every page, file and search
line is there, every drawing opens by itself, and the browser runs and asks for nothing more.
"""

import re
from copy import deepcopy
from pathlib import Path
from xml.etree import ElementTree

import pytest
import yaml
from playwright.sync_api import Browser

from builder.files import read_folder, with_photos
from builder.pipeline import document_of, pack_of, venue_of
from builder.site.build import build_document
from tests.fields import free_texts, with_texts
from tests.site.visiting import own_guides, visit

QUARRY = Path(__file__).parents[1] / "venues" / "quarry"
SCRIPT = '"><script>window.__hostile=1</script>'
AIM = re.compile(r"|(\.\./)?[a-z-]+\.html(#[a-z0-9-]+)?")
PNG = b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x00\x01\x00\x00\x00\x01" + b"\x00" * 16
PHOTO = '" onerror="window.__hostile=4".png'


@pytest.fixture(scope="module")
def texts() -> dict[str, str]:
    """A venue in which every name and word carries a payload, and two decks the worst."""
    given = read_folder(QUARRY).texts
    hostile = with_texts(
        given,
        free_texts(given),
        lambda text: SCRIPT if text == "Deck" else f"{text[:48]}<svg/onload=window.__hostile=2>",
    )
    stage = yaml.safe_load(hostile["stage.yml"])
    stage["decks"].append({**deepcopy(stage["decks"][0]), "name": "Main & thrust"})
    house = yaml.safe_load(hostile["house.yml"])
    house["trouble_spots"][0]["photo"] = PHOTO
    return hostile | {"stage.yml": yaml.safe_dump(stage), "house.yml": yaml.safe_dump(house)}


@pytest.fixture(scope="module")
def site(texts: dict[str, str], tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its site, with a photo whose name is an attribute."""
    site = tmp_path_factory.mktemp("hostile-names") / "site"
    photos = {PHOTO: PNG}
    with own_guides():
        document = document_of(pack_of(venue_of(texts, photos)))
        build_document(with_photos(document, photos), site)
    return site


def test_every_drawing_and_feed_of_the_site_opens_by_itself(site: Path) -> None:
    drawings = [*site.glob("drawings/*.svg"), *site.glob("*.xml")]
    assert len(drawings) > 5
    for path in drawings:
        for each in ElementTree.parse(path).iter():  # noqa: S314 - what we wrote ourselves
            assert str(each.tag).rpartition("}")[2] != "script"
            assert not [name for name in each.attrib if name.startswith("on")]
            aim = each.get("href", "")
            assert re.fullmatch(
                r"(\.\./[a-z-]+\.html#[a-z0-9-]+)?|[a-z-]+\.html(#[a-z0-9-]+)?", aim
            )


def test_names_of_files_are_plain(site: Path) -> None:
    names = [path.name for path in site.rglob("*")]
    assert [name for name in names if not re.fullmatch(r"[A-Za-z0-9._-]+", name)] == []
    assert "stage-plan-deck-main-thrust.svg" in names
    assert "stage-plan-deck-script-window-hostile-1-script.svg" in names


@pytest.mark.browser
def test_no_page_and_no_drawing_runs_what_a_name_says(browser: Browser, site: Path) -> None:
    with visit(browser, site.as_uri()) as page:
        for path in (*sorted(site.glob("*.html")), *sorted(site.glob("drawings/*.svg"))):
            if path.name == "404.html":
                continue
            page.goto(path.as_uri())
            assert page.evaluate("window.__hostile") is None, path.name
            planted = ":is(script:not([src]), [onload], [onerror], [onmouseover])"
            assert page.locator(planted).count() == 0, path.name


@pytest.mark.browser
def test_a_name_that_is_markup_is_found_and_leads_to_its_line(browser: Browser, site: Path) -> None:
    with visit(browser, site.as_uri()) as page:
        page.goto(f"{site.as_uri()}/index.html")
        page.locator(".search-input").fill("main & thrust")
        first = page.locator(".answers a").first
        first.wait_for()
        assert "Main & thrust" in first.inner_text()
        first.click()
        page.wait_for_url("**/stage.html#deck-main-thrust")
        assert "Main & thrust" in page.locator("#deck-main-thrust").inner_text()
