//go:build !(js && wasm)

// Command wasm is the calculator for the page's Web Worker. It runs only as
// WebAssembly; `go run ./build` compiles it.
package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "this program runs in a browser: use go run ./build")
	os.Exit(2)
}
