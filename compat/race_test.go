//go:build race

package compat_test

// underRace reports whether the tests run with the race detector.
const underRace = true
