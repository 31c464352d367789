// Command tomljson prints a TOML file as JSON, so that a JSON Schema can be held against it. Plain dates become texts.
//
//	go run ./.ci/tomljson boat.toml
package main

import (
	"encoding/json"
	"fmt"
	"os"
	"time"

	"github.com/BurntSushi/toml"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, err) //nolint:errcheck // nowhere left to say it
		os.Exit(1)
	}
}

func run(args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("read %d arguments, taken: one TOML file", len(args))
	}
	var m map[string]any
	if _, err := toml.DecodeFile(args[0], &m); err != nil {
		return err
	}
	return json.NewEncoder(os.Stdout).Encode(plain(m))
}

// plain is a value with dates as texts.
func plain(v any) any {
	switch v := v.(type) {
	case time.Time:
		return v.Format(time.DateOnly)
	case map[string]any:
		for k, e := range v {
			v[k] = plain(e)
		}
	case []any:
		for i, e := range v {
			v[i] = plain(e)
		}
	case []map[string]any:
		for _, e := range v {
			plain(e)
		}
	}
	return v
}
