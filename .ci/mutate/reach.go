package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"time"
)

// test is one test and how long it takes alone, with -short.
type test struct {
	name string
	took time.Duration
}

// lines are lines of files, by the files' base names.
type lines map[string]map[int]bool

func (l lines) add(file string, line int) {
	if l[file] == nil {
		l[file] = map[int]bool{}
	}
	l[file][line] = true
}

// survey runs each test of a package alone and notes through which lines of the package to change it comes. A test that fails alone is left to the run of all.
func survey(dir, pkg, tests string, i, atOnce int) (*run, error) {
	r := &run{pkg: tests, reach: map[string]map[int][]test{}}
	binary := filepath.Join(dir, fmt.Sprintf("cover%d", i))
	if out, err := exec.Command("go", "test", "-c", "-vet=off", "-coverpkg", pkg, "-o", binary, tests).CombinedOutput(); err != nil {
		return r, fmt.Errorf("%w: %s", err, out)
	}
	list := exec.Command(binary, "-test.list", ".")
	list.Dir = tests
	names, err := list.Output()
	if err != nil {
		return r, err
	}
	var each []string
	for _, name := range strings.Fields(string(names)) {
		if !strings.HasPrefix(name, "Benchmark") {
			each = append(each, name)
		}
	}
	through := make([]lines, len(each))
	took := make([]time.Duration, len(each))
	room := make(chan struct{}, max(1, atOnce))
	var all sync.WaitGroup
	for k, name := range each {
		room <- struct{}{}
		all.Go(func() {
			defer func() { <-room }()
			profile := filepath.Join(dir, fmt.Sprintf("profile%d-%d", i, k))
			c := exec.Command(binary, "-test.short", "-test.run", "^"+name+"$", "-test.coverprofile", profile)
			c.Dir = tests
			begin := time.Now()
			if c.Run() != nil {
				return
			}
			took[k] = time.Since(begin)
			text, _ := os.ReadFile(profile) // none where the test covers nothing
			through[k] = coveredBy(string(text))
		})
	}
	all.Wait()
	for k, ls := range through {
		for file, nums := range ls {
			if r.reach[file] == nil {
				r.reach[file] = map[int][]test{}
			}
			for l := range nums {
				r.reach[file][l] = append(r.reach[file][l], test{each[k], took[k]})
			}
		}
	}
	return r, nil
}

// coveredBy reads a profile of coverage.
func coveredBy(profile string) lines {
	out := lines{}
	for line := range strings.Lines(profile) {
		// path/file.go:from.col,to.col statements count
		name, rest, ok := strings.Cut(strings.TrimSpace(line), ".go:")
		fields := strings.Fields(rest)
		if !ok || len(fields) != 3 || fields[2] == "0" {
			continue
		}
		from, to, _ := strings.Cut(fields[0], ",")
		for l := lineOf(from); l <= lineOf(to); l++ {
			out.add(filepath.Base(name)+".go", l)
		}
	}
	return out
}

func lineOf(s string) int {
	l, _, _ := strings.Cut(s, ".")
	n, _ := strconv.Atoi(l)
	return n
}
