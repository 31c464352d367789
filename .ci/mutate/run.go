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
}

// compile makes the test binary and runs it once without a change: it must pass, and its time says when a change hangs.
func compile(dir, overlay, pkg string, i int) (run, error) {
	r := run{binary: filepath.Join(dir, fmt.Sprintf("tests%d", i)), dir: pkg}
	if out, err := exec.Command("go", "test", "-c", "-vet=off", "-overlay", overlay, "-o", r.binary, pkg).CombinedOutput(); err != nil {
		return r, fmt.Errorf("%w: %s", err, out)
	}
	begin := time.Now()
	if ok, out := r.with(0, 10*time.Minute); !ok {
		return r, errors.New(pkg + " fails without a change: " + out)
	}
	r.wait = time.Since(begin)*patience + grace
	return r, nil
}

// with runs the tests with one change, and reports whether they passed.
func (r run) with(id int, wait time.Duration) (bool, string) {
	ctx, cancel := context.WithTimeout(context.Background(), wait)
	defer cancel()
	c := exec.CommandContext(ctx, r.binary, "-test.failfast", "-test.timeout", wait.String())
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
