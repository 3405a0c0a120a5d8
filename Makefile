# `make` alone lists what there is to do. Everything is set up in .venv, and again only when
# requirements.txt or pyproject.toml changes.
PYTHON ?= python3
VENV   := .venv
BIN    := $(VENV)/bin
PIP     = $(BIN)/python -m pip --disable-pip-version-check --quiet install --constraint requirements.txt
ARGS   ?=

# The theme's end-of-life notice is known and pinned against: keep it out of every build.
export NO_MKDOCS_2_WARNING := 1

# True for any value but empty, 0 and no: make site STRICT=1
STRICT ?=
strict := $(if $(filter-out 0 no,$(STRICT)),--strict)

.DEFAULT_GOAL := help
.PHONY: help site usb test serve check bench fuzz clean

help: ## List these targets
	@awk -F ':.*## ' '/^[a-z]+:.*## / { printf "  make %-8s %s\n", $$1, $$2 }' Makefile

site: $(VENV)/site.stamp ## Build the book into site/ (STRICT=1: warnings fail too)
	@echo "Building the book into site/ ..."
	@$(BIN)/mkdocs build $(strict)
	@echo "Built: site/index.html. Look at it with: make serve, then open the address it prints."

usb: $(VENV)/site.stamp ## Build a copy into usb/ that reads and searches from a stick, with no server
	@echo "Building the copy for a stick into usb/ ..."
	@WITNESSMARK_STICK=1 $(BIN)/mkdocs build $(strict) --site-dir usb
	@echo "Built: copy the folder usb/ to a stick and open usb/index.html there. Ticks and installing are not promised from a stick."

test: $(VENV)/test.stamp ## Run the tests (ARGS="-k units" passes on to pytest)
	@echo "Running the tests ..."
	@$(BIN)/python -m pytest -q -rs -n auto --dist loadfile $(ARGS)

serve: $(VENV)/site.stamp ## Show the book in a browser, rebuilt as you edit (Ctrl-C ends it)
	@$(BIN)/mkdocs serve $(ARGS)

check: $(VENV)/site.stamp ## Check the sources without building pages
	@$(BIN)/witnessmark check $(ARGS)

bench: $(VENV)/site.stamp ## Measure against plain pages, then on a throttled phone (ARGS="--sizes 100": plain pages alone)
	@$(BIN)/python benchmarks/bench.py $(or $(ARGS),--sizes 250 1000)
	@$(if $(ARGS),,$(BIN)/python benchmarks/phone.py)

fuzz: $(VENV)/test.stamp ## Spoil the demo's sources in 100,000 ways (ARGS="--seed 2 --mutations 5000")
	@$(BIN)/python tests/fuzz.py $(ARGS)

clean: ## Remove what was built and installed here
	rm -rf $(VENV) site usb build plugins/*.egg-info .pytest_cache .hypothesis
	find plugins tests benchmarks -name __pycache__ -type d -prune -exec rm -rf {} +

# A Python without venv leaves half an environment behind, so ask before creating one.
define python_is_fit
import sys
have = "%d.%d" % sys.version_info[:2]
if sys.version_info < (3, 11):
    sys.exit("Python 3.11 or newer is needed; %s is %s.\nWith a newer one installed: make PYTHON=python3.12 ..." % (sys.executable, have))
try:
    import venv, ensurepip
except ImportError:
    sys.exit("One package is missing: python%s-venv.\nOn Debian or Ubuntu: apt-get install python%s-venv" % (have, have))
endef
export python_is_fit

$(VENV)/made.stamp:
	@command -v $(PYTHON) >/dev/null || { echo "Python 3.11 or newer is needed, and there is no $(PYTHON). On Debian or Ubuntu: apt-get install python3-venv" >&2; exit 1; }
	@$(PYTHON) -c "$$python_is_fit"
	@echo "Creating $(VENV) with $$($(PYTHON) --version) ..."
	@$(PYTHON) -m venv --clear $(VENV)
	@touch $@

# setuptools is installed first and pinned too, so that building the package asks for nothing else.
$(VENV)/site.stamp: requirements.txt pyproject.toml | $(VENV)/made.stamp
	@echo "Installing the pinned packages (half a minute or so, the first time) ..."
	@$(PIP) setuptools
	@$(PIP) --no-build-isolation --editable .
	@touch $@

$(VENV)/test.stamp: $(VENV)/site.stamp
	@echo "Installing the pinned packages for the tests (another half a minute, the first time) ..."
	@$(PIP) --no-build-isolation --editable ".[test]"
	@touch $@
