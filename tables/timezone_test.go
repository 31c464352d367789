package tables_test

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
	_ "time/tzdata" // so that the zones are there on every computer

	"boatyard.example/bottomwork/tables"
)

// The TOML parser gives a date without a zone the offset of the computer, read when the program starts. Programs started in
// three zones must find the same fingerprint.
func TestFingerprintIsTheSameEverywhere(t *testing.T) {
	if os.Getenv("FINGERPRINT_ONLY") != "" {
		fmt.Println("fingerprint " + tables.Default().Fingerprint())
		return
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	for _, zone := range []string{"UTC", "Asia/Tokyo", "America/New_York"} {
		cmd := exec.Command(self, "-test.run=^TestFingerprintIsTheSameEverywhere$")
		cmd.Env = append(os.Environ(), "TZ="+zone, "FINGERPRINT_ONLY=1")
		out, err := cmd.CombinedOutput()
		if want := "fingerprint " + tables.Default().Fingerprint(); err != nil || !strings.Contains(string(out), want) {
			t.Errorf("in %s:\n%s%v\nwant %s", zone, out, err, want)
		}
	}
}
