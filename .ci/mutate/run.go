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

// run is the tests of one package.
type run struct {
	pkg    string
	binary string // compiled with all changes
	wait   time.Duration
	reach  map[string]map[int][]test // by the base name of a changed file and the line: the tests that come through it
}

// compile makes the test binary and runs it without a change: it must pass, and its time says when a change hangs.
func (r *run) compile(dir, overlay string, i int, short bool) error {
	r.binary = filepath.Join(dir, fmt.Sprintf("tests%d", i))
	if out, err := exec.Command("go", "test", "-c", "-vet=off", "-overlay", overlay, "-o", r.binary, r.pkg).CombinedOutput(); err != nil {
		return fmt.Errorf("%w: %s", err, out)
	}
	r.wait = 10 * time.Minute
	if short {
		return nil
	}
	begin := time.Now()
	if ok, out := r.with(0, r.wait); !ok {
		return errors.New(r.pkg + " fails without a change: " + out)
	}
	r.wait = time.Since(begin)*patience + grace
	return nil
}

// quick is how long a test takes that is asked before the others.
const quick = 300 * time.Millisecond

// notices reports whether a test fails that comes through the changed line: first the quick ones are asked.
func (r *run) notices(p point) bool {
	var names [2][]string
	var wait [2]time.Duration
	for _, t := range r.reach[filepath.Base(p.file)][p.num] {
		at := 0
		if t.took > quick {
			at = 1
		}
		names[at] = append(names[at], t.name)
		wait[at] += t.took
	}
	for i := range names {
		if len(names[i]) == 0 {
			continue
		}
		if ok, _ := r.with(p.id, wait[i]*patience+grace, "-test.short", "-test.run", "^("+strings.Join(names[i], "|")+")$"); !ok {
			return true
		}
	}
	return false
}

// fails reports whether any test fails with the change.
func (r *run) fails(id int) bool {
	ok, _ := r.with(id, r.wait)
	return !ok
}

// with runs tests with one change, and returns what they said.
func (r *run) with(id int, wait time.Duration, flags ...string) (bool, string) {
	ctx, cancel := context.WithTimeout(context.Background(), wait)
	defer cancel()
	c := exec.CommandContext(ctx, r.binary, append(flags, "-test.failfast", "-test.timeout", wait.String())...)
	c.Dir = r.pkg
	c.Env = append(os.Environ(), "MUTATE="+strconv.Itoa(id))
	out, err := c.CombinedOutput()
	return err == nil, string(out)
}
