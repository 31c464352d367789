package tables_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables/finding"
)

// A row that gives its key and its basis alone is told every field that it lacks, and no other.
func TestWhatARowMustGive(t *testing.T) {
	needed := map[string]string{
		"acceptance":  "area_spots least_single sampling spot_readings",
		"active":      "class copper_share",
		"area_method": "order",
		"can":         "size",
		"caution":     "says",
		"coating":     "role",
		"colour":      "srgb",
		"condition":   "rule verdict",
		"criterion":   "says weight",
		"drying":      "energy packs",
		"electrode":   "she",
		"factor":      "value",
		"grade":       "grade says scale",
		"hull_form":   "edges_share factor waterline_share",
		"instrument":  "cannot reads says tells",
		"law":         "place read_on says subject verdict",
		"loss":        "loss residue",
		"material":    "barrier copper_free cuprous_oxide metallic_copper old_copper_stays other_copper painted prepare two_pack",
		"observation": "urgency what why",
		"overcoat":    "level rule verdict",
		"past_result": "coating months outcome place",
		"piece":       "factor shape zone",
		"potential":   "active electrode noble series",
		"price":       "of per price",
		"protection":  "at_or_below electrode",
		"roughness":   "ks rating resistance_15kn resistance_30kn rt50",
		"rule":        "says",
		"sampling":    "readings standard",
		"season":      "says",
		"sign":        "for says test",
		"step":        "hours_m2 says",
		"supply":      "per rate unit",
		"threshold":   "least most repair state strip unit worse",
		"value":       "unit value",
		"zone":        "wear",
	}
	var rows strings.Builder
	for table := range needed {
		rows.WriteString("[[" + table + "]]\nkey = \"x\"\nbasis = \"derived\"\n")
	}
	_, err := book(t).With(ownFile(rows.String()))
	got := map[string][]string{}
	for _, f := range faultsOf(t, err) {
		if table, field, _ := strings.Cut(f.Key, "[x]."); errors.Is(f, finding.ErrMissing) {
			got[table] = append(got[table], field)
		}
	}
	for table, want := range needed {
		slices.Sort(got[table])
		if strings.Join(got[table], " ") != want {
			t.Errorf("%s lacks %q, want %q", table, got[table], want)
		}
	}
}

// Names of rows that the book does not hold are told where they stand.
func TestEveryNameIsLookedUp(t *testing.T) {
	const head = "key = \"x\"\nbasis = \"derived\"\n"
	rows := map[string]string{
		"area_method": head + "order = 0\nfor = [\"nosuch\"]\nwants = [\"nosuch\"]\n",
		"zone":        head + "wear = 1\ngoes_with = \"nosuch\"\n",
		"piece":       head + "shape = \"plate\"\nfactor = 1\nzone = \"nosuch\"\n",
		"supply":      head + "unit = \"kg\"\nper = \"coat\"\nrate = 1\nby = [\"nosuch\"]\n",
		"potential":   head + "series = \"s\"\nnoble = \"-200 mV\"\nactive = \"-300 mV\"\nelectrode = \"nosuch\"\nmaterial = \"nosuch\"\n",
		"protection":  head + "at_or_below = \"-800 mV\"\nelectrode = \"nosuch\"\nmaterial = \"nosuch\"\n",
	}
	var text strings.Builder
	for table, row := range rows {
		text.WriteString("[[" + table + "]]\n" + row)
	}
	f := good()["coating"]
	f["key"], f["materials"], f["hazards"], f["basis"] = `"x"`, `["nosuch"]`, "", `"derived"`
	text.WriteString(row("coating", f))
	_, err := book(t).With(ownFile(text.String()))
	var got []string
	for _, f := range faultsOf(t, err) {
		if errors.Is(f, finding.ErrUnknown) && f.Got == `"nosuch"` {
			got = append(got, f.Key)
		}
	}
	want := []string{
		"area_method[x].for", "area_method[x].wants", "coating[x].materials", "piece[x].zone", "potential[x].electrode", "potential[x].material",
		"protection[x].electrode", "protection[x].material", "supply[x].by", "zone[x].goes_with",
	}
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("unknown names at %q, want %q\n%v", got, want, err)
	}
}
