// Command mutate asks whether the tests would notice: it changes one thing at a time in lines that tests cover, runs the tests, and lists the changes that
// nobody noticed.
//
//	go run ./.ci/mutate -pkg ./compat -n 50 -seed 1 ./compat ./antifoul ./examples/bottomjob
//
// The arguments are the packages whose tests are run for each change, in this order, until one fails. Sources stay as they are: changes are laid over them, all
// that are drawn into one test binary, which is told by its environment which of them to follow. A change that does not compile counts for nothing and is
// replaced by another. A change that stands in .ci/mutants.txt with the reason why nobody can notice it is not drawn. It exits 1 when less than the share of
// -want was noticed, or when the list names a change that there is no longer.
package main

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"time"
)

func main() {
	pkg := flag.String("pkg", "", "package `folder` to change")
	n := flag.Int("n", 50, "`number` of changes")
	seed := flag.Uint64("seed", 1, "of the draw")
	want := flag.Float64("want", 0.9, "`share` that must be noticed")
	list := flag.String("explained", ".ci/mutants.txt", "`file` of changes that nobody can notice")
	flag.Parse()
	if *pkg == "" || flag.NArg() == 0 {
		fail("taken: -pkg folder, and the packages whose tests are run")
	}
	covered, err := coverage(*pkg, flag.Args())
	check(err)
	points, err := collect(*pkg, covered)
	check(err)
	points, stale, err := leaveOut(points, *pkg, *list)
	check(err)
	for _, s := range stale {
		fmt.Printf("NO SUCH CHANGE %s\n", s)
	}
	r := rand.New(rand.NewPCG(*seed, 0))
	r.Shuffle(len(points), func(i, j int) { points[i], points[j] = points[j], points[i] })
	fmt.Printf("%s: %d changes possible in covered lines\n", *pkg, len(points))

	dir, err := os.MkdirTemp("", "mutate-*")
	check(err)
	tried, noticed := trial(dir, *pkg, points, *n, flag.Args())
	check(os.RemoveAll(dir))
	if tried == 0 {
		fail("no change could be tried")
	}
	share := float64(noticed) / float64(tried)
	fmt.Printf("%s: %d of %d changes noticed, %.0f %%\n", *pkg, noticed, tried, 100*share)
	if share < *want || len(stale) > 0 {
		os.Exit(1)
	}
}

// trial lays the changes over the package and runs the tests with each.
func trial(dir, pkg string, points []point, n int, tests []string) (tried, noticed int) {
	drawn, overlay, err := lay(dir, pkg, points, n)
	check(err)
	runs := make([]run, len(tests))
	for i, t := range tests {
		runs[i], err = compile(dir, overlay, t, i)
		check(err)
	}
	for _, p := range drawn {
		lived := true
		for _, r := range runs {
			if lived = r.passes(p.id); !lived {
				break
			}
		}
		tried++
		if lived {
			fmt.Printf("NOT NOTICED %s: %s: %s\n", p.at, p.what, p.line)
		} else {
			noticed++
		}
	}
	return tried, noticed
}

// patience is how often the time of unchanged tests a change may take, and what is added to it: a change that hangs is noticed.
const (
	patience = 6
	grace    = 10 * time.Second
)

func check(err error) {
	if err != nil {
		fail(err.Error())
	}
}

func fail(why string) {
	fmt.Fprintln(os.Stderr, why)
	os.Exit(2)
}
