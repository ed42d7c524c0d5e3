// Command stripped runs a test that was compiled for the browser as the page's programs
// are shipped: stripped. Its arguments are a command that runs such programs, the
// program, and whatever else the command takes, as "go test -exec" gives them. A program
// that cannot be stripped is not run: the test is about the stripped one.
package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"

	"wideberth/internal/webbuild/strip"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		if exit, ok := errors.AsType[*exec.ExitError](err); ok {
			os.Exit(exit.ExitCode())
		}
		fmt.Fprintln(os.Stderr, "stripped:", err)
		os.Exit(1)
	}
}

func run(args []string) error {
	for i, arg := range args {
		program, err := os.ReadFile(arg)
		if err != nil || !bytes.HasPrefix(program, []byte("\x00asm")) {
			continue
		}
		bare, err := strip.Program(program)
		if err != nil {
			return err
		}
		args[i] = arg + ".stripped"
		if err := os.WriteFile(args[i], bare, 0o755); err != nil {
			return err
		}
		defer os.Remove(args[i])
		cmd := exec.Command(args[0], args[1:]...)
		cmd.Stdin, cmd.Stdout, cmd.Stderr = os.Stdin, os.Stdout, os.Stderr
		return cmd.Run()
	}
	return errors.New("there is no program among the arguments")
}
