package antifoul

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

func written(t *testing.T, text string) string {
	t.Helper()
	tr, err := parseTree(text)
	if err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return tr.String()
}

// Values first, then sections, each in the order of the file; sections at the top stand apart, those inside are set in; inline tables of a list stay on their line.
func TestTreeIsWrittenInTheOrderOfTheFile(t *testing.T) {
	const text = `
zulu = 1 # the first
alpha = [ 'a', "b" ]
[m]
  deep = { y = 2, x = "one" }
late = true
[[z]]
k = 1
[[z.in]]
b = 1
a = 2
[z.in.more]
w = 0.5
[[z]]
j = [ { q = 1 }, 3 ]
none = []
k = 2
[b]
`
	const want = `zulu = 1
alpha = ["a", "b"]

[m]
late = true
  [m.deep]
  y = 2
  x = "one"

[[z]]
k = 1
  [[z.in]]
  b = 1
  a = 2
    [z.in.more]
    w = 0.5

[[z]]
k = 2
j = [{ q = 1 }, 3]
none = []

[b]
`
	if got := written(t, text); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// Each value is written as TOML 1.0 has it; typed beside the rules of its pages on floats, dates and strings.
func TestValuesAreWrittenAsTOML(t *testing.T) {
	for in, want := range map[string]string{
		"+7": "7", "-12": "-12", "1_000": "1000", "0xff": "255", "true": "true", "false": "false",
		"1.0": "1.0", "1e3": "1000.0", "-0.25": "-0.25", "6.5e-3": "0.0065", "nan": "nan", "inf": "inf", "+inf": "inf", "-inf": "-inf",
		"2027-04-03": "2027-04-03", "2027-04-03 07:08:09": "2027-04-03T07:08:09", "2027-04-03T07:08:09.25": "2027-04-03T07:08:09.25",
		"07:08:09": "07:08:09", "07:08:09.5": "07:08:09.5", "2027-04-03T07:08:09Z": "2027-04-03T07:08:09Z", "2027-04-03T07:08:09.125+02:00": "2027-04-03T07:08:09.125+02:00",
		"[]": "[]", "[[1, 2], []]": "[[1, 2], []]", "[{ b = 1, a = [1] }]": "[{ a = [1], b = 1 }]",
		`"plain"`: `"plain"`, `''`: `""`, `'a "b" \c'`: `"a \"b\" \\c"`, `"tab\tline\nend"`: `"tab\tline\nend"`,
		`"\u0000\u001f\u007f"`: `"\u0000\u001F\u007F"`, `" ~"`: `" ~"`, `"é 漆 😀"`: `"é 漆 😀"`,
		`"\u00a0\u200b"`: `"\u00A0\u200B"`, `"\uffff\U000E0001"`: `"\uFFFF\U000E0001"`,
	} {
		if got := written(t, "v = "+in+"\n"); got != "v = "+want+"\n" {
			t.Errorf("%s is written as %s, want %s", in, got, want)
		}
	}
}

// Keys are bare where TOML lets them: the ends of each run of letters and digits, and what stands beside them in ASCII.
func TestKeysAreBareOrQuoted(t *testing.T) {
	for key, bare := range map[string]bool{
		"a": true, "z": true, "A": true, "Z": true, "0": true, "9": true, "_": true, "-": true, "a-b_C9": true,
		"": false, "`": false, "{": false, "@": false, "[": false, "/": false, ":": false, "a b": false, "b é": false, "é": false, ",": false, "^": false,
	} {
		want := key
		if !bare {
			want = `"` + key + `"`
		}
		if got := written(t, fmt.Sprintf("%q = 1\n", key)); got != want+" = 1\n" {
			t.Errorf("the key %q is written %s", key, got)
		}
		if got := written(t, fmt.Sprintf("[%q.s]\nx = 1\n", key)); key != "" && got != "["+want+"]\n  ["+want+".s]\n  x = 1\n" {
			t.Errorf("the section %q is written %s", key, got)
		}
	}
}

// A line holds eight full stops and no more, strings and lists alike; what is read back is the same.
func TestFullStopsOfOneLine(t *testing.T) {
	eight := strings.Repeat("1.", 8)
	for s, want := range map[string][]string{
		"":                       {""},
		eight:                    {eight},
		eight + "  ":             {eight + "  "},
		eight + "x":              {eight, "x"},
		eight + " x":             {eight + " ", "x"},
		eight + "\t\n x":         {eight + "\t\n ", "x"},
		eight + eight:            {eight, eight},
		eight + eight + "1":      {eight, eight, "1"},
		eight + " . y":           {eight + " ", ". y"},
		"." + eight + "9 and é.": {".1.1.1.1.1.1.1.", "1.9 and é."},
	} {
		if got := pieces(s); !slices.Equal(got, want) {
			t.Errorf("%q is cut into %q, want %q", s, got, want)
		}
	}
	if got, want := stringText(eight+"x"), `"""`+eight+"\\\nx"+`"""`; got != want {
		t.Errorf("written %s, want %s", got, want)
	}
	long := "v = [" + strings.Repeat("1.5, ", 7) + "1.5"
	if got := written(t, long+"]\n"); got != long+"]\n" {
		t.Errorf("eight on one line: %s", got)
	}
	if got, want := written(t, long+", 2.5]\n"), "v = [\n"+strings.Repeat("  1.5,\n", 8)+"  2.5,\n]\n"; got != want {
		t.Errorf("nine: %s", got)
	}
}

// Whatever is written is read as what it was written from.
func TestTreeIsReadBack(t *testing.T) {
	for _, text := range []string{
		"a = 'x'\n\"b c\" = [1.5, inf, -0.0]\n[d.\"e f\".g]\nh = 07:08:09\n[[d.i]]\nj = 2027-04-03T07:08:09.5\n[[d.i]]\n[[d.i.k]]\nl = '''a\n\"b\"\\'''\n",
		"v = \"" + strings.Repeat("1. 2.3 ", 30) + "\"\nw = ['" + strings.Repeat("a.b\t", 9) + "', { x = 'q.r.s.t.u.v.w.x.y.z' }]\n",
		"n = \"quote \\\" back \\\\ slash ........ \\\" \\\\ line\\n\\n .\"\n",
	} {
		was, is := map[string]any{}, map[string]any{}
		if _, err := toml.Decode(text, &was); err != nil {
			t.Fatal(err)
		}
		out := written(t, text)
		if _, err := toml.Decode(out, &is); err != nil {
			t.Errorf("%v in\n%s", err, out)
		} else if d := cmp.Diff(was, is, cmpopts.EquateNaNs()); d != "" {
			t.Errorf("%s\nof\n%s", d, out)
		}
		for i, line := range strings.Split(out, "\n") {
			if strings.Count(line, ".") > 8 {
				t.Errorf("line %d has %d full stops: %s", i+1, strings.Count(line, "."), line)
			}
		}
	}
}

// Keys that are added stand behind the one that they follow, else at the end, in the order in which they were named; what has a place keeps it. Keys of a section that are put in order stand before the others.
func TestAddedKeysHaveTheirPlace(t *testing.T) {
	tr, err := parseTree("a = 1\nd = 2\nh = 3\n[s]\nu = 0\ny = 1\nx = 2\n")
	if err != nil {
		t.Fatal(err)
	}
	tr.follow("a", "c", "b", "d")
	tr.follow("d", "z")
	tr.follow("h", "o", "n", "zz")
	tr.follow("", "f", "e", "a")
	tr.follow("nowhere", "g")
	tr.arrange("s", "s.x", "s.w", "s.y")
	for _, k := range []string{"b", "c", "e", "f", "n", "o", "z", "zz"} {
		tr.m[k] = int64(0)
	}
	tr.m["s"].(map[string]any)["w"] = int64(0)
	if got, want := tr.String(), "a = 1\nc = 0\nb = 0\nd = 2\nz = 0\nh = 3\no = 0\nn = 0\nzz = 0\nf = 0\ne = 0\n\n[s]\nx = 2\nw = 0\ny = 1\nu = 0\n"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if tr.order["g"] <= tr.order["s.y"] {
		t.Error("what follows nothing does not stand behind what the file has")
	}
}

// A remark is what stands behind a # outside every kind of string, told with its line.
func TestRemarksOfATOMLText(t *testing.T) {
	const text = `# one
a = 1 ## two #
#
   #   three  	
b = "no # remark \" # none \\" # four
c = 'no # \' # five
d = """
# none \""" # none "" #
""" # six
e = '''
# none \''' # seven
f = """one \
   # none""" # eight
g = "" # nine
h = ['', "#", '#'] # ten
i = "it's" # eleven
j = """"# none""" # twelve
k = """# none"""" # thirteen
l = '''# none''''' # fourteen
m = """""" # fifteen
`
	want := []string{
		"line 1: one", "line 2: two #", "line 4: three", "line 5: four", "line 6: five", "line 9: six", "line 11: seven", "line 13: eight",
		"line 14: nine", "line 15: ten", "line 16: eleven",
		"line 17: twelve", "line 18: thirteen", "line 19: fourteen", "line 20: fifteen",
	}
	if got := remarks(text); !slices.Equal(got, want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
	if _, err := parseTree(text); err != nil {
		t.Errorf("the text is no TOML: %v", err)
	}
	for text, want := range map[string][]string{
		"": nil, "#": nil, "# end": {"line 1: end"}, "a = 'b'# end": {"line 1: end"}, "a = \"x\n# line 2": {"line 2: line 2"},
	} {
		if got := remarks(text); len(got) != len(want) || len(want) > 0 && !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
