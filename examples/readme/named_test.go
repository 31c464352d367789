package readme_test

import (
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

var (
	inlineOrBlock = regexp.MustCompile("(?s)```([a-z]*)\n(.*?)```|`([^`]+)`")
	looksRun      = regexp.MustCompile(`^(?:[A-Z]+=\S+ )*(?:go [a-z]|\.ci/)`)
	assigned      = regexp.MustCompile(`^[A-Z]+=\S+$`)
	declared      = regexp.MustCompile(`(?m)^func ((?:Test|Example|Benchmark|Fuzz)\w*)\(`)
	toolLine      = regexp.MustCompile(`(?m)^(?:tool |\t)\S+/([\w-]+)(?:/v\d+)?$`)
)

// commands lists the commands of a page: lines of its sh blocks and texts between backticks that call go or something in .ci. A file in .ci that nobody can
// run, or a folder, alone between backticks, is only spoken of.
func commands(page, root string) []string {
	var out []string
	add := func(line string) {
		line = strings.Join(strings.Fields(line), " ")
		if !looksRun.MatchString(line) {
			return
		}
		if strings.HasPrefix(line, ".ci/") {
			if at, err := os.Stat(filepath.Join(root, line)); err == nil && (at.IsDir() || at.Mode()&0o111 == 0) {
				return
			}
		}
		out = append(out, line)
	}
	for _, m := range inlineOrBlock.FindAllStringSubmatch(page, -1) {
		switch {
		case m[3] != "":
			add(m[3])
		case m[1] == "sh":
			for line := range strings.Lines(m[2]) {
				add(line)
			}
		}
	}
	return out
}

// names lists what is wrong with what a command names.
func names(root, line string) []string {
	args := slices.DeleteFunc(words(line), func(a string) bool { return strings.HasPrefix(a, ">") })
	for len(args) > 0 && assigned.MatchString(args[0]) {
		args = args[1:]
	}
	var sub string
	if len(args) > 1 {
		sub = args[1]
	}
	switch {
	case len(args) == 0:
		return []string{"it is no command"}
	case strings.HasPrefix(args[0], ".ci/"):
		return script(root, args[0])
	case sub == "test":
		return testCommand(root, args[2:])
	case sub == "run" && len(args) > 2:
		return runCommand(root, args[2:])
	case sub == "tool" && len(args) > 3:
		return toolCommand(root, strings.TrimPrefix(args[2], "-modfile="), args[3])
	case sub == "mod" && slices.Contains(args, "-module"):
		return nil
	}
	return []string{"nothing is known of " + args[0] + " " + sub}
}

func script(root, name string) []string {
	at, err := os.Stat(filepath.Join(root, name))
	switch {
	case err != nil:
		return []string{"no file " + name}
	case at.IsDir() || at.Mode()&0o111 == 0:
		return []string{name + " cannot be run"}
	}
	return nil
}

func toolCommand(root, mod, tool string) []string {
	text, err := os.ReadFile(filepath.Join(root, mod))
	if err != nil {
		return []string{"no file " + mod}
	}
	for _, m := range toolLine.FindAllStringSubmatch(string(text), -1) {
		if m[1] == tool || tool == "NAME" {
			return nil
		}
	}
	return []string{tool + " is no tool of " + mod}
}

// runCommand holds that the package is a command, has the flags, and that what looks like a package among its arguments is one.
func runCommand(root string, args []string) []string {
	src, ok := sources(root, args[0], func(name string) bool { return !strings.HasSuffix(name, "_test.go") })
	if !ok {
		return []string{"no package " + args[0]}
	}
	if !strings.Contains(src, "package main\n") {
		return []string{args[0] + " is no command"}
	}
	var out []string
	for _, a := range args[1:] {
		switch {
		case strings.HasPrefix(a, "./"):
			if _, ok := sources(root, a, goFile); !ok {
				out = append(out, "no package "+a)
			}
		case strings.HasPrefix(a, "-") && !defines(src, a):
			out = append(out, fmt.Sprintf("%s is no flag of %s", a, args[0]))
		}
	}
	return out
}

// testCommand holds that the packages exist, that each has the flags that are not those of every test, and that each part of a pattern matches something: in
// each package of a list, or somewhere in a tree.
func testCommand(root string, args []string) []string {
	var packages, out []string
	for _, a := range args {
		if strings.HasPrefix(a, "./") {
			packages = append(packages, a)
		}
	}
	for _, p := range packages {
		src, ok := sources(root, p, func(name string) bool { return strings.HasSuffix(name, "_test.go") })
		if !ok {
			out = append(out, "no package "+p)
			continue
		}
		var names []string
		for _, m := range declared.FindAllStringSubmatch(src, -1) {
			names = append(names, m[1])
		}
		for i, a := range args {
			name, isFlag := strings.CutPrefix(a, "-")
			if !isFlag {
				continue
			}
			if flag.Lookup("test."+name) == nil && !defines(src, a) {
				out = append(out, fmt.Sprintf("%s is no flag of %s", a, p))
			}
			if kinds := map[string][]string{"run": {"Test", "Example", "Fuzz"}, "bench": {"Benchmark"}, "fuzz": {"Fuzz"}}[name]; kinds != nil {
				out = append(out, unmatched(a, args[i+1], p, slices.DeleteFunc(slices.Clone(names), func(n string) bool {
					return !slices.ContainsFunc(kinds, func(k string) bool { return strings.HasPrefix(n, k) })
				}))...)
			}
		}
	}
	return out
}

// unmatched lists the parts of a pattern that match none of the names. The pattern of an empty name is meant to match none.
func unmatched(flag, pattern, pkg string, names []string) []string {
	if pattern == "^$" {
		return nil
	}
	var out []string
	for one := range strings.SplitSeq(pattern, "|") {
		re, err := regexp.Compile(one)
		switch {
		case err != nil:
			out = append(out, fmt.Sprintf("%s %s: %v", flag, one, err))
		case !slices.ContainsFunc(names, re.MatchString):
			out = append(out, fmt.Sprintf("%s %s matches nothing in %s", flag, one, pkg))
		}
	}
	return out
}

// defines reports whether the source defines the flag, "-update".
func defines(src, name string) bool {
	return regexp.MustCompile(`flag\.(?:\w+Var\(&[\w.]+, |\w+\()"` + regexp.QuoteMeta(strings.TrimPrefix(name, "-")) + `"`).MatchString(src)
}

func goFile(name string) bool { return strings.HasSuffix(name, ".go") }

// sources is the text of the files of a package, or of a tree (./x/...), that are wanted. It is false where there is no Go file at all.
func sources(root, pkg string, wanted func(string) bool) (text string, ok bool) {
	dir, tree := strings.CutSuffix(pkg, "/...")
	var b strings.Builder
	top := filepath.Join(root, dir)
	err := filepath.WalkDir(top, func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && p != top && (!tree || strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata"):
			return fs.SkipDir
		case d.IsDir() || !goFile(p):
			return nil
		}
		ok = true
		if wanted(p) {
			src, err := os.ReadFile(p)
			if err != nil {
				return err
			}
			b.Write(src)
		}
		return nil
	})
	return b.String(), ok && err == nil
}
