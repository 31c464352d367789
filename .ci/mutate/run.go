package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// run is the tests of one package, compiled with all changes.
type run struct {
	binary, dir string
	wait        time.Duration
	short       bool // with -short they take less than half the time, so that is tried first
}

// compile makes the test binary and runs it without a change: it must pass, and its time says when a change hangs.
func compile(dir, overlay, pkg string, i int) (run, error) {
	r := run{binary: filepath.Join(dir, fmt.Sprintf("tests%d", i)), dir: pkg}
	if out, err := exec.Command("go", "test", "-c", "-vet=off", "-overlay", overlay, "-o", r.binary, pkg).CombinedOutput(); err != nil {
		return r, fmt.Errorf("%w: %s", err, out)
	}
	r.wait = 10 * time.Minute
	begin := time.Now()
	inShort, _ := r.with(0, "-test.short") // some tests are too few to tell with -short
	short := time.Since(begin)
	if ok, out := r.with(0); !ok {
		return r, errors.New(pkg + " fails without a change: " + out)
	}
	all := time.Since(begin) - short
	r.wait, r.short = all*patience+grace, inShort && short < all/2
	return r, nil
}

// passes reports whether the tests pass with the change.
func (r run) passes(id int) bool {
	if r.short {
		if ok, _ := r.with(id, "-test.short"); !ok {
			return false
		}
	}
	ok, _ := r.with(id)
	return ok
}

// with runs the tests with one change, and returns what they said.
func (r run) with(id int, flags ...string) (bool, string) {
	ctx, cancel := context.WithTimeout(context.Background(), r.wait)
	defer cancel()
	c := exec.CommandContext(ctx, r.binary, append(flags, "-test.failfast", "-test.timeout", r.wait.String())...)
	c.Dir = r.dir
	c.Env = append(os.Environ(), "MUTATE="+strconv.Itoa(id))
	out, err := c.CombinedOutput()
	return err == nil, string(out)
}

// coverage returns the lines of the package that the tests run, by the base name of the file.
func coverage(pkg string, tests []string) (map[string]map[int]bool, error) {
	profile, err := os.CreateTemp("", "mutate-*.cover")
	if err != nil {
		return nil, err
	}
	defer os.Remove(profile.Name())
	args := append([]string{"test", "-short", "-coverpkg", pkg, "-coverprofile", profile.Name()}, tests...)
	if out, err := exec.Command("go", args...).CombinedOutput(); err != nil && !strings.Contains(string(out), "coverage:") {
		return nil, fmt.Errorf("%w: %s", err, out)
	}
	text, err := os.ReadFile(profile.Name())
	if err != nil {
		return nil, err
	}
	out := map[string]map[int]bool{}
	for line := range strings.Lines(string(text)) {
		// path/file.go:from.col,to.col statements count
		name, rest, ok := strings.Cut(strings.TrimSpace(line), ".go:")
		fields := strings.Fields(rest)
		if !ok || len(fields) != 3 || fields[2] == "0" {
			continue
		}
		from, to, _ := strings.Cut(fields[0], ",")
		file := filepath.Base(name) + ".go"
		if out[file] == nil {
			out[file] = map[int]bool{}
		}
		for l := lineOf(from); l <= lineOf(to); l++ {
			out[file][l] = true
		}
	}
	return out, nil
}

func lineOf(s string) int {
	l, _, _ := strings.Cut(s, ".")
	n, _ := strconv.Atoi(l)
	return n
}
