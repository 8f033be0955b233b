# Needs Go, git and make. `make test` says what else it needs, or installs it.

# Go's own runner for WebAssembly under Node.
NODE = PATH="$$PATH:$$(go env GOROOT)/lib/wasm" GOOS=js GOARCH=wasm
# What ends up in the WebAssembly is tested as WebAssembly too.
CORE = ./calc/... ./wasm
FUZZTIME = 1m

.PHONY: run test check bench fuzz clean

run: # writes the site, serves it and follows every change
	go run ./build serve

test:
	sh build/need node chromium
	go vet ./...
	go test ./...
	$(NODE) go vet $(CORE)
	$(NODE) go test $(CORE)
	go vet -tags browser ./build/browser
	go test -tags browser ./build/browser

check: # format, imports, sizes
	go run ./build check

bench:
	sh build/need chromium
	go test -run '^$$' -bench . $(CORE)
	go run ./build/bench

fuzz: # every fuzz test there is, one after the other
	sh build/fuzz $(FUZZTIME)

clean:
	rm -rf build/_site build/_bench
	go clean -testcache
