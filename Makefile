# Two commands from a fresh clone: make site, make test. Each sets up its own environment in .venv.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
VENUE ?= venue
SITE ?= site
LAWS ?= all
# Compiled modules are kept, whatever the surroundings say: the tests start the program often.
export PYTHONDONTWRITEBYTECODE :=

.PHONY: mutants docs versions site test lint types contracts units laws wheel schemas guide lock bench serve clean

site: $(VENV)/site-ready
	$(BIN)/housepack check --venue $(VENUE)
	$(BIN)/housepack build --venue $(VENUE) --to $(SITE)

serve: $(VENV)/site-ready
	$(BIN)/housepack serve --venue $(VENUE)

test: lint types contracts units

lint: $(VENV)/test-ready
	$(BIN)/ruff check builder tests benchmarks
	$(BIN)/ruff format --check builder tests benchmarks
	$(BIN)/biome check --error-on-warnings

types: $(VENV)/test-ready
	$(BIN)/mypy

contracts: $(VENV)/test-ready
	$(BIN)/lint-imports

units: $(VENV)/test-ready
	$(BIN)/python -m pytest -n 2 --dist loadfile

# Every case of every law; a part of them with LAWS=0.05. HOUSEPACK_SEED repeats a draw.
laws: $(VENV)/test-ready
	HOUSEPACK_LAWS=$(LAWS) $(BIN)/python -m pytest -n 2 -m laws

# The demo's pack from this Python and from the newest one here: the same bytes.
versions: $(VENV)/site-ready
	$(MAKE) --no-print-directory VENV=.venv-newest PYTHON="$$(.ci/newest-python)" .venv-newest/site-ready
	$(BIN)/housepack pack --venue $(VENUE) > .venv-newest/pack-here.json
	.venv-newest/bin/housepack pack --venue $(VENUE) > .venv-newest/pack-newest.json
	cmp .venv-newest/pack-here.json .venv-newest/pack-newest.json
	@echo "The pack has the same bytes from $$($(BIN)/python --version) and $$(.venv-newest/bin/python --version)."

# The wheel that a house of one's own installs: dist/housepack-...-py3-none-any.whl.
wheel: | $(VENV)/bin/python
	$(BIN)/python -m pip wheel --quiet --disable-pip-version-check --no-deps --wheel-dir dist .

schemas: $(VENV)/site-ready
	$(BIN)/housepack schema --to schemas

guide: $(VENV)/site-ready
	$(BIN)/python -c "from pathlib import Path; from builder.files import example_files, write_whole; from builder.explaining.examples import examples_in; from builder.explaining.pages import guide_pages; [write_whole(Path('docs', name), text) for name, text in guide_pages(examples_in(example_files())).items()]"

# Small faults on purpose, to see whether the tests notice: make mutants ROOM=formulas COUNT=200.
ROOM ?= formulas
COUNT ?= 200
SEED ?= 1
mutants: $(VENV)/test-ready
	$(BIN)/python tests/mutants.py $(ROOM) --count $(COUNT) --seed $(SEED)

# The project's documentation: guides, every key, problems, methods, decisions, changelog.
docs: $(VENV)/docs-ready
	NO_MKDOCS_2_WARNING=1 $(BIN)/python -m mkdocs build --quiet --clean
	@echo "The documentation stands in docs-site/index.html"

lock: | $(VENV)/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --upgrade -e '.[test]'
	$(BIN)/python -m pip freeze --exclude-editable | grep -v '^housepack' > constraints.txt

bench: $(VENV)/test-ready
	$(BIN)/python -m benchmarks

$(VENV)/bin/python:
	$(PYTHON) -c 'import sys; sys.exit(0 if sys.version_info >= (3, 11) else "housepack needs Python 3.11 or newer; set PYTHON=python3.11 or later")'
	$(PYTHON) -m venv $(VENV)

$(VENV)/site-ready: pyproject.toml constraints.txt | $(VENV)/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -c constraints.txt -e .
	touch $@

$(VENV)/docs-ready: pyproject.toml constraints.txt | $(VENV)/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -c constraints.txt -e '.[docs]'
	touch $@

$(VENV)/test-ready: pyproject.toml constraints.txt | $(VENV)/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -c constraints.txt -e '.[test]'
	touch $@ $(VENV)/site-ready

clean:
	rm -rf $(VENV) .venv-newest $(SITE) docs-site build dist .cache .mypy_cache .ruff_cache .pytest_cache .hypothesis
