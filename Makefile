# Every habit of this project. `make help` lists them.

PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
INSTALLED := $(VENV)/.installed
PYTEST_ARGS ?= -n 2 --dist loadgroup

.DEFAULT_GOAL := help
.PHONY: help demo test check format preview bench soak mutate fuzz pictures lock clean

help: ## List what can be made
	@sed -n 's/^\([a-z]*\):.*## \(.*\)/  make \1\t\2/p' $(MAKEFILE_LIST) | expand -t 18

demo: $(INSTALLED) ## Build the demonstration handbook into site/, score, sign and examine a record
	$(BIN)/basinside demo build/demo --site site

test: $(INSTALLED) ## Run every test, in a browser too (finds a Chromium or installs one)
	$(BIN)/python tests/browser/provide.py
	$(BIN)/python -m pytest $(PYTEST_ARGS)

check: $(INSTALLED) ## Lint, format, types, house rules, licences
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy
	$(BIN)/python -m pytest tests/house -q --durations=3
	$(BIN)/reuse lint --quiet || { $(BIN)/reuse lint; exit 1; }

format: $(INSTALLED) ## Put the code into the house's form
	$(BIN)/ruff check --fix-only .
	$(BIN)/ruff format .

preview: $(INSTALLED) ## Show the demonstration handbook and rebuild it at each save
	$(BIN)/basinside preview

bench: $(INSTALLED) ## Measure sizes and speeds against what is to be held
	$(BIN)/python -m tests.benchmarks

soak: $(INSTALLED) ## Run the property tests for long, with many more examples, and axe over all pages
	$(BIN)/python -m pytest $(PYTEST_ARGS) -m 'not browser and not packaging' --hypothesis-profile=soak
	$(BIN)/python tests/browser/provide.py
	BASINSIDE_EVERY_PAGE=1 $(BIN)/python -m pytest tests/browser/test_every_page.py

mutate: $(INSTALLED) ## Make 500 mistakes in the demonstration and see which rule notices each
	$(BIN)/python -m tests.mutations

fuzz: $(INSTALLED) ## Feed broken and hostile files for a minute; SECONDS=600 for longer
	$(BIN)/python -m tests.fuzz $(SECONDS)

pictures: $(INSTALLED) ## Make the README's pictures from the real pages
	$(BIN)/python tests/browser/provide.py
	$(BIN)/python tests/pictures/make.py

lock: ## Renew requirements.lock (needs uv)
	uv pip compile pyproject.toml --extra test --universal --python-version 3.11 --upgrade \
	  --generate-hashes --no-annotate --no-header --no-emit-index-url --no-emit-find-links \
	  --quiet --output-file requirements.lock

clean: ## Remove what was built; the environment too
	rm -rf site build dist .mypy_cache .pytest_cache .ruff_cache .hypothesis $(VENV)
	find generator -name '*.egg-info' -prune -exec rm -rf {} +

# The environment: from the hashed lock, then this checkout itself, with the lock's own setuptools.
$(INSTALLED): pyproject.toml setup.py requirements.lock
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { \
	  echo "Basinside needs Python 3.11 or newer; name one:  make PYTHON=python3.12 ..."; exit 1; }
	@test -x $(BIN)/pip || $(PYTHON) -m venv $(VENV) || { \
	  rm -rf $(VENV); \
	  echo; echo "Python cannot make an environment here. On Debian or Ubuntu:"; \
	  echo "  sudo apt-get install python3-venv"; exit 1; }
	$(BIN)/pip install --quiet --disable-pip-version-check --require-hashes -r requirements.lock
	$(BIN)/pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
	@touch $@
