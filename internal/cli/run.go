package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"
)

// Exit codes.
const (
	exitClear   = 0 // and: the command did what it was asked
	exitTight   = 1
	exitStrikes = 2
	exitBad     = 3 // bad input; the sentence is on standard error
)

// streams are what a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// command is one verb. It returns the exit code, or an error whose sentence is
// shown and whose code is exitBad.
type command func(ctx context.Context, args []string, s streams) (int, error)

var commands = map[string]command{
	"check":   check,
	"swing":   printSwing,
	"room":    printRoom,
	"picture": drawPicture,
	"sure":    printSure,
	"serve":   serve,
	"build":   build,
	"site":    makeSite,
	"size":    size,
}

// run carries out one command line and returns the exit code.
func run(ctx context.Context, args []string, in io.Reader, out, errOut io.Writer) int {
	verb := ""
	if len(args) > 0 {
		verb = args[0]
	}
	cmd, known := commands[verb]
	if !known {
		fmt.Fprintf(errOut, "%q is not a command; choose one of %s\n", verb, strings.Join(verbs(), ", "))
		return exitBad
	}
	code, err := cmd(ctx, args[1:], streams{in, out, errOut})
	switch {
	case errors.Is(err, flag.ErrHelp):
		return exitClear
	case err != nil:
		fmt.Fprintln(errOut, err)
		return exitBad
	}
	return code
}

func verbs() []string {
	var names []string
	for name := range commands {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// flagSet lists its flags only to whoever asks for them: a mistake is one sentence.
type flagSet struct {
	*flag.FlagSet
	list func()
}

// newFlags returns an empty flag set whose messages go to standard error. usage
// is the line after the verb.
func newFlags(verb, usage string, s streams) flagSet {
	flags := flag.NewFlagSet(verb, flag.ContinueOnError)
	flags.SetOutput(io.Discard) // run shows the error itself, once
	flags.Usage = func() {}
	return flagSet{flags, func() {
		flags.SetOutput(s.err)
		fmt.Fprintf(s.err, "usage: %s %s\n", verb, usage)
		flags.PrintDefaults()
	}}
}

// Parse reads the flags of a command line.
func (f flagSet) Parse(args []string) error {
	err := f.FlagSet.Parse(args)
	switch {
	case errors.Is(err, flag.ErrHelp):
		f.list()
	case err != nil:
		return fmt.Errorf("%w (%s -h lists the flags)", err, f.Name())
	}
	return err
}
