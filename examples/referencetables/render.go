package main

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"
)

// markdown writes the sheets as pipe tables.
func markdown(out *bytes.Buffer, fingerprint string, all []sheet) error {
	fmt.Fprintf(out, "# Reference tables %s\n\nGeneric knowledge of boat bottom coatings. The tin's own data sheet, the boat's own record and local law outrank every cell.\n", fingerprint)
	for _, s := range all {
		fmt.Fprintf(out, "\n## %s\n", s.Title)
		if s.Says != "" {
			fmt.Fprintf(out, "\n%s\n", s.Says)
		}
		if len(s.Rows) == 0 {
			continue
		}
		out.WriteString("\n| key |")
		for _, h := range s.Head {
			fmt.Fprintf(out, " %s |", h)
		}
		out.WriteString(" rests on | doubt |\n|" + strings.Repeat("---|", len(s.Head)+3) + "\n")
		for _, r := range s.Rows {
			out.WriteString("| " + cell(r.Key))
			for _, c := range r.Cells {
				out.WriteString(" | " + cell(c))
			}
			out.WriteString(" | " + cell(r.Basis) + " | " + cell(r.Doubt) + " |\n")
		}
	}
	return nil
}

// cell keeps a text inside its table cell.
func cell(s string) string {
	return strings.NewReplacer("|", "\\|", "\n", " ", "<", "\\<", "*", "\\*", "_", "\\_").Replace(s)
}

var pageTemplate = template.Must(template.New("page").Funcs(template.FuncMap{"id": func(i int) string { return fmt.Sprintf("t%d", i) }}).Parse(`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Reference tables {{.Fingerprint}}</title>
<style>
:root { color-scheme: light dark; }
body { font: 1rem/1.5 Georgia, "Times New Roman", serif; margin: 0 auto; max-width: 78rem; padding: 1rem 1.5rem; }
h1, h2 { font-weight: normal; line-height: 1.2; }
h2 { border-top: 3px double; margin-top: 3rem; padding-top: .6rem; }
nav ul { columns: 3 14rem; padding-left: 1.2rem; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; font: .82rem/1.35 "DejaVu Sans", Verdana, sans-serif; }
caption { text-align: left; padding-bottom: .4rem; }
th, td { border-bottom: 1px solid #8886; padding: .25rem .6rem; text-align: left; vertical-align: top; min-width: 4rem; }
thead th { border-bottom: 2px solid; }
tbody th { font-weight: normal; font-family: monospace; white-space: nowrap; }
td.doubt { font-style: italic; min-width: 14rem; }
@media print { body { max-width: none; font-size: 9pt; } table { font-size: 6.5pt; } .wide { overflow: visible; } nav { display: none; } tr { break-inside: avoid; } }
</style>
</head>
<body>
<h1>Reference tables {{.Fingerprint}}</h1>
<p>Generic knowledge of boat bottom coatings. The tin’s own data sheet, the boat’s own record and local law outrank every cell. Cite a cell by its table, its key and the twelve digits above.</p>
<nav aria-label="Tables"><ul>{{range $i, $s := .Sheets}}<li><a href="#{{id $i}}">{{$s.Title}}</a> ({{len $s.Rows}})</li>{{end}}</ul></nav>
{{range $i, $s := .Sheets}}<h2 id="{{id $i}}">{{$s.Title}}</h2>
<div class="wide"><table>
{{with $s.Says}}<caption>{{.}}</caption>{{end}}
<thead><tr><th scope="col">key</th>{{range $s.Head}}<th scope="col">{{.}}</th>{{end}}<th scope="col">rests on</th><th scope="col">doubt</th></tr></thead>
<tbody>{{range $s.Rows}}
<tr><th scope="row">{{.Key}}</th>{{range .Cells}}<td>{{.}}</td>{{end}}<td>{{.Basis}}</td><td class="doubt">{{.Doubt}}</td></tr>{{end}}
</tbody></table></div>
{{end}}</body>
</html>
`))

// page writes the sheets as one HTML page that needs nothing else.
func page(out *bytes.Buffer, fingerprint string, all []sheet) error {
	return pageTemplate.Execute(out, struct {
		Fingerprint string
		Sheets      []sheet
	}{fingerprint, all})
}
