// Package report answers one question: how is a job told?
//
// Write turns an antifoul.Job into a report in text, Markdown or HTML, long for a surveyor or short for the shed wall, and into data for programs: one JSON
// document with all of it, sheets of the layers and of what to buy, a calendar. All words of a report are made here and from the rule rows of the book;
// the packages below hold values only.
//
//	err := report.Write(os.Stdout, job, report.Options{Format: report.Markdown, Units: quantity.Metric})
//
// Survey tells the found half alone: of a job of antifoul.Look nothing else is known.
//
// The report is composed once as blocks (headings, paragraphs, lists, tables) and then rendered, so each format says the same.
//
//	the answer in a few lines        answer.go
//	the boat, and what was assumed   boat.go
//	condition as found               survey.go
//	old films, metals in the water   films.go
//	why this type, why not others    choice.go
//	layers, litres, cans             layers.go, buy.go
//	order of work, hold points       order.go
//	colours and how long             wear.go
//	was it put on                    puton.go
//	days of work                     days.go, season.go
//	money, growth, biocide           cost.go, drag.go, leach.go
//	law, cautions, bases, limits     basis.go
//	a job log beside the plan        log.go
//	one page                         short.go
//	drawings, for HTML alone         section.go, life.go, side.go, daysdrawing.go; svg.go
//	the page and its style           html.go, page.html, page.css
//	for programs                     json.go and one file a section; csv.go, icalendar.go
//
// A drawing of the side is of the kind of hull, not of the boat; the page is in English, left to right.
package report
