package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"time"
)

// outcome is what became of a mutant.
type outcome string

// The outcomes. Only the first two count.
const (
	killed    outcome = "killed"
	survived  outcome = "survived"
	stillborn outcome = "does not compile"
)

// trial runs the tests of one package against mutants of its files.
type trial struct {
	path, dir string        // of the package
	scratch   string        // a folder of our own
	limit     time.Duration // for one run of the tests
}

// memory is what one run of the tests may take, kB of address space: a fault may
// make a loop endless that fills a list.
const memory = 6_000_000

// try puts a mutant into its file, for the compiler only, and runs the tests.
func (t trial) try(m mutant) (outcome, error) {
	source, err := os.ReadFile(m.file)
	if err != nil {
		return "", err
	}
	changed := filepath.Join(t.scratch, "mutant.go")
	if err := os.WriteFile(changed, m.apply(source), 0o644); err != nil {
		return "", err
	}
	list, err := json.Marshal(map[string]map[string]string{"Replace": {m.file: changed}})
	if err != nil {
		return "", err
	}
	overlay := filepath.Join(t.scratch, "overlay.json")
	if err := os.WriteFile(overlay, list, 0o644); err != nil {
		return "", err
	}
	if ok, err := t.compile("-overlay", overlay); err != nil || !ok {
		return stillborn, err
	}
	ok, _, err := t.run()
	if err != nil {
		return "", err
	}
	if ok {
		return survived, nil
	}
	return killed, nil
}

// baseline runs the tests as they are, which must pass, and sets the limit of
// time to several times what they took.
func (t *trial) baseline() error {
	if ok, err := t.compile(); err != nil {
		return err
	} else if !ok {
		return fmt.Errorf("%s does not compile: mend it before asking what its tests see", t.path)
	}
	t.limit = 5 * time.Minute
	ok, took, err := t.run()
	if err != nil {
		return err
	}
	if !ok {
		return fmt.Errorf("the tests of %s fail as they are: mend them before asking what they see", t.path)
	}
	t.limit = 4*took + 10*time.Second
	return nil
}

func (t trial) binary() string { return filepath.Join(t.scratch, "tests") }

// compile makes the package's test binary.
func (t trial) compile(flags ...string) (ok bool, err error) {
	if err := os.RemoveAll(t.binary()); err != nil {
		return false, err
	}
	args := append([]string{"test", "-c", "-o", t.binary()}, flags...)
	err = exec.Command("go", append(args, t.path)...).Run()
	return succeeded(err)
}

// run runs the test binary; a package without tests has none and passes.
func (t trial) run() (ok bool, took time.Duration, err error) {
	if _, err := os.Stat(t.binary()); os.IsNotExist(err) {
		return true, 0, nil
	}
	script := "ulimit -v " + strconv.Itoa(memory) + "; exec \"$0\" -test.failfast -test.timeout " + t.limit.String()
	cmd := exec.Command("sh", "-c", script, t.binary())
	cmd.Dir = t.dir
	start := time.Now()
	ok, err = succeeded(cmd.Run())
	return ok, time.Since(start), err
}

// succeeded tells a program that failed from one that could not be started.
func succeeded(err error) (bool, error) {
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		return false, nil
	}
	return err == nil, err
}
