//go:build !race

package wear_test

// underRace reports whether the tests run with the race detector.
const underRace = false
