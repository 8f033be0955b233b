// Command build writes the site.
//
//	go run ./build [-o DIR]                    writes it (default build/_site)
//	go run ./build serve [-addr HOST:PORT]     writes it, serves it, and again after every change
//	go run ./build -url ADDRESS                writes it for that address, with what search engines and previews want
//	go run ./build check                       checks what no test checks, and prints sizes
//
// It is run from the top folder of the project and needs only Go.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"plainlift/site"
)

const (
	defaultDir  = "build/_site"
	defaultAddr = "127.0.0.1:8080"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(args []string) error {
	command := ""
	if len(args) > 0 && (args[0] == "serve" || args[0] == "check") {
		command, args = args[0], args[1:]
	}
	flags := flag.NewFlagSet("build", flag.ExitOnError)
	dir := flags.String("o", filepath.FromSlash(defaultDir), "the folder to write")
	pages := flags.Bool("pages", false, "write the pages only and keep the WebAssembly that is there")
	addr := flags.String("addr", defaultAddr, "where to serve")
	url := flags.String("url", "", "where the site will stand, like https://example.org/plainlift/")
	flags.Parse(args)
	if flags.NArg() > 0 {
		return fmt.Errorf("build: no such command: %s (serve, check, or none to write the site)", flags.Arg(0))
	}
	if _, err := os.Stat("go.mod"); err != nil {
		return fmt.Errorf("build: run this from the top folder of the project, where go.mod is")
	}
	address := ""
	if *url != "" {
		var err error
		if address, err = site.Address(*url); err != nil {
			return fmt.Errorf("build: -url: %w", err)
		}
	}
	switch command {
	case "serve":
		return serve(*dir, *addr, address)
	case "check":
		return check(os.Stdout)
	}
	return build(".", *dir, address, *pages)
}
