# Wide Berth. `make run` to use it, `make test` to trust it.
#
# Needs Go, make and git. What else is missing (Chromium, Node for the tests)
# is installed from Debian's packages by `make deps`, as root.

SHELL := /bin/bash
.SHELLFLAGS := -euo pipefail -c
.DEFAULT_GOAL := help
.NOTPARALLEL:

GO ?= go
ADDR ?= localhost:8080
FUZZTIME ?= 5s
LONG ?= 10000000
FOR ?= 1m
FROM ?= 1
BENCHTIME ?= 1s
PLAYED ?= 10m
MUTANTS ?= 40
SITE ?= site
ADDRESS ?=
SEED ?= 1
# As the programs are compiled, so that what they share is compiled once.
JS := GOOS=js GOARCH=wasm GOFLAGS=-trimpath
# lint vets every test, so running them does not: each pass of vet goes through all that
# is imported, the standard library too.
GOTEST = $(GO) test -vet=off
# Runs a test binary that was compiled for the browser, in Node. The loader has
# room for a small environment only, so it gets the search path and the collector's bound.
JSEXEC = env -i PATH=$$PATH GOMEMLIMIT=300MiB $(shell $(GO) env GOROOT)/lib/wasm/go_js_wasm_exec
# The same of what is shipped: stripped after linking.
STRIPPEDEXEC = $(CURDIR)/bin/stripped $(JSEXEC)

.PHONY: help run build site cli test lint page unit wasmtest size compiled browser bench fuzz search mutants shots deps clean

help: ## Print this list
	@grep -hE '^[a-z]+:.*##' Makefile | sed -E 's/^([a-z]+):.*## /\1\t/' | expand -t 12

run: ## Build the page and serve it on this machine (ADDR=host:port)
	$(GO) run ./internal/cli build -quality 5
	exec $(GO) run ./internal/cli serve -addr $(ADDR)

build: ## Build public/build with the best compression
	$(GO) run ./internal/cli build

site: ## Build a folder for any static host (SITE=folder ADDRESS=where it will stand)
	$(GO) run ./internal/cli site -o $(SITE) -address "$(ADDRESS)"

cli: ## Build the command line tool as bin/wideberth
	$(GO) build -trimpath -o bin/wideberth ./internal/cli

test: deps lint compiled browser ## Everything below, in this order

lint: ## gofmt and go vet, for this machine and for the browser
	@unformatted=$$(gofmt -l internal wasm); \
	if [ -n "$$unformatted" ]; then echo "not formatted by gofmt:"; echo "$$unformatted"; exit 1; fi
	$(GO) vet -tags browser -printf.funcs=wideberth/internal/lean/fmt.Sprintf ./...
	$(JS) $(GO) vet ./wasm/... ./internal/webbuild/empty

page: ## The page's scripts: their types, also those of the wire, and their tests in Node
	node_modules/.bin/tsc -p internal/pagetest
	node --test internal/pagetest

unit: ## Unit, property, golden and example tests, the fuzz corpora, and distances against a physics library in Node
	$(GOTEST) ./...

wasmtest: ## Reports, maps, marks, remedies and what is built again, compiled for the browser and stripped as what is shipped: the same golden bytes, in bounded memory
	$(GO) build -o bin/stripped ./internal/webbuild/stripped
	$(JS) $(GOTEST) -run Golden -exec="$(STRIPPEDEXEC)" ./internal/solver/words ./internal/sim/maps ./internal/sim/ball ./internal/builder
	$(JS) $(GOTEST) -run MemoryHasABound -exec="$(STRIPPEDEXEC)" ./internal/solver/protocol

size: ## Build both programs and hold what a visitor transfers to the budgets
	$(GO) run ./internal/cli size -check

compiled: ## size, and beside it page, unit and wasmtest: compressing keeps one core busy
	@log=$$(mktemp); failed=0; \
	$(MAKE) --no-print-directory size >"$$log" 2>&1 & \
	$(MAKE) --no-print-directory page unit wasmtest || failed=1; \
	wait $$! || failed=1; \
	cat "$$log"; rm "$$log"; exit $$failed

browser: ## The page in headless Chromium (public/build must be built)
	$(GOTEST) -tags browser -count=1 -timeout 15m -parallel 2 ./internal/browsertest

bench: ## Benchmarks, on this machine, compiled for the browser, beside a physics library, and in a browser (PLAYED=10m; public/build must be built)
	mkdir -p .cache
	$(GO) test -run '^$$' -bench . -benchmem -benchtime $(BENCHTIME) ./internal/...
	$(JS) $(GO) test -run '^$$' -bench . -benchmem -benchtime $(BENCHTIME) -exec="$(JSEXEC)" ./internal/sim/maps
	$(GO) test -run '^$$' -bench . -benchmem -benchtime $(BENCHTIME) ./internal/sim/fit -peer $(CURDIR)/.cache/peer.json | tee .cache/native.txt
	$(JS) $(GO) test -run '^$$' -bench . -benchmem -benchtime $(BENCHTIME) -exec="$(JSEXEC)" ./internal/sim/fit | tee .cache/wasm.txt
	node testdata/rapier/bench.mjs .cache/peer.json .cache/native.txt .cache/wasm.txt
	$(GO) test -tags browser -count=1 -v -timeout 60m -run '^TestMeasure' ./internal/browsertest -measure $(PLAYED)

fuzz: ## Every fuzz target for a few seconds by Go's engine, and as long in one process (FUZZTIME=5s LONG=10000000: no more inputs than these)
	@for pkg in $$($(GO) list ./internal/...); do \
	  for target in $$($(GO) test -list '^Fuzz' $$pkg | grep '^Fuzz' || true); do \
	    echo "$$pkg $$target"; $(GO) test -run '^$$' -fuzz "^$$target\$$" -fuzztime $(FUZZTIME) -fuzzminimizetime 10x $$pkg; \
	    $(GO) test -v -run "^$$target\$$" -timeout 0 $$pkg -long $(LONG) -within $(FUZZTIME) | grep -v '^ *=== \|^ *--- PASS\|^PASS'; \
	  done; \
	done

search: ## Look for answers that are more reassuring than the swings (FOR=1m, FROM=1: the first golfer drawn)
	$(GO) test -v -run '^TestSearch$$' -timeout 0 ./internal/sim/family -search $(FOR) -from $(FROM)

mutants: ## What the tests notice: small faults put in, a sample of all (MUTANTS=40 SEED=1)
	$(GO) run ./internal/mutate -sample $(MUTANTS) -seed $(SEED) ./internal/...

shots: deps build ## Screenshots of every sheet and of named states at three sizes, into shots/, and the pictures in docs/
	$(GO) test -tags browser -count=1 -timeout 15m -run '^Test(States|Sheets)$$' ./internal/browsertest -shots $(CURDIR)/shots
	mkdir -p docs && cp shots/demo-desktop.png docs/picture.png && cp shots/stand-desktop-light.png docs/stand.png
	$(GO) run ./internal/cli picture -o docs/drawn.png -view all -size 1200 testdata/plans/left-hander.json

deps: ## Install what the tests need and this machine lacks
	@missing=""; \
	[ -x /usr/lib/chromium/chromium-headless-shell ] || missing="$$missing chromium-headless-shell fonts-liberation"; \
	command -v node >/dev/null || missing="$$missing nodejs"; \
	command -v npm >/dev/null || missing="$$missing npm"; \
	if [ -n "$$missing" ]; then \
	  apt-get update -qq; \
	  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $$missing; \
	fi
	@[ "$$(cat node_modules/.from 2>/dev/null)" = "$$(sha256sum <package-lock.json)" ] || \
	  { npm ci --loglevel=error && sha256sum <package-lock.json >node_modules/.from; }

clean: ## Remove everything that was built
	rm -rf public/build site bin shots .cache node_modules
