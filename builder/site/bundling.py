"""
One style sheet and one script a page in place of many files: on a bad signal each request costs
more than what it brings.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from hashlib import sha256
from pathlib import Path

from builder.compiling.packing import as_loaded
from builder.files import write_whole

STYLES = re.compile(r'(?:\s*<link rel="stylesheet" href="[^":]+">)+')
SCRIPTS = re.compile(r'(?:\s*<script src="[^":]+"></script>)+')
ADDRESS = re.compile(r'(?:href|src)="([^"]+)"')


@dataclass(slots=True)
class Bundles:
    """The files that pages ask for together, by the name of the one that stands for them."""

    found: dict[str, tuple[str, ...]] = field(default_factory=dict)

    def page(self, html: str) -> str:
        """
        A page that asks once for the style sheets that follow each other, and once for the scripts.
        """
        html = STYLES.sub(self._joined('<link rel="stylesheet" href="{}">', "css"), html)
        return SCRIPTS.sub(self._joined('<script src="{}"></script>', "js"), html)

    def write(self, site: Path) -> None:
        """
        Write each bundle beside the files that it is made of.

        Raises
        ------
        FileNotFoundError
            If a page asks for a file that the site does not have.
        """
        for name, parts in self.found.items():
            texts = [(site / part).read_text("utf-8").rstrip() for part in parts]
            if name.endswith(".js"):
                texts = [as_loaded(text) for text in texts]
            write_whole(site / name, "".join(f"{text}\n" for text in texts))

    def _joined(self, markup: str, ending: str) -> Callable[[re.Match[str]], str]:
        def join(run: re.Match[str]) -> str:
            addresses = ADDRESS.findall(run[0])
            if len(addresses) < 2:
                return run[0]
            # A page that is not at the top of the site writes the way up before each address.
            up = addresses[0][: len(addresses[0]) - len(addresses[0].lstrip("./"))]
            parts = tuple(address.removeprefix(up) for address in addresses)
            # The name follows from what is joined, not from what it says, so that pages of one site
            # share it.
            name = f"assets/{sha256(chr(10).join(parts).encode()).hexdigest()[:8]}.{ending}"
            self.found[name] = parts
            return "\n" + markup.format(up + name)

        return join
