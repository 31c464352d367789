package report

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/finding"
)

// The plan of days, in units of a drawing.
const (
	daysLeft  = 4.0
	daysRight = columnWidth - 4
	daysSky   = 18.0 // the row of weather
	daysRow   = 11.8
)

// wall is the axis of days: each day as wide as the next, from midnight to midnight by the clock of the place.
type wall struct {
	first time.Time // midnight
	days  int
	wide  float64 // of a day
	from  int     // hours of the day between which somebody works: the width of a day stands for these
	to    int
}

// x is where a moment stands.
func (w wall) x(t time.Time) float64 {
	day := w.day(t)
	hour := float64(t.Hour()) + float64(t.Minute())/60
	share := (hour - float64(w.from)) / float64(max(1, w.to-w.from))
	return daysLeft + w.wide*(float64(day)+min(1, max(0, share)))
}

// day is the number of a moment's day on the wall.
func (w wall) day(t time.Time) int {
	return int(math.Round(midnight(t).Sub(w.first).Hours() / 24))
}

func midnight(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, t.Location())
}

// drawDays draws the plan of days: work as bars over the days, the weather of the coats' hours, and the windows.
func (c *composer) drawDays(turns []antifoul.Turn, p calendar.Calendar) {
	if len(p.Items) == 0 {
		return
	}
	w := c.wall(p)
	d := drawing{title: "The days of work.", says: c.sum(p)}
	k := &d.body
	k.w = columnWidth
	y := c.daysHead(k, w, p)
	top := y
	sky := c.daysWeather(k, w, turns, p, &y)
	d.note = "Each column is a day. Filled: a coat; hatched: other work; open: the yard's. Line between ticks: its window."
	if sky != "" {
		d.note += " Weather in the working hours of each day, for the coat that is next: empty go, half measure, full no."
		d.says += " " + sky
	}
	var rows []string
	var bars canvas
	for _, it := range p.Items {
		rows = append(rows, c.daysBar(&bars, w, turns[it.Task], it, &y))
	}
	rows = append(rows, c.daysReady(&bars, w, p, &y)...)
	for i := range w.days + 1 { // weeks
		if t := w.first.AddDate(0, 0, i); i < w.days && t.Weekday() == time.Monday {
			k.line(pen{faint: true, width: 0.6}, point{daysLeft + w.wide*float64(i), top}, point{daysLeft + w.wide*float64(i), y})
		}
	}
	k.out = append(k.out, bars.out...) // over the lines
	k.line(pen{}, point{daysLeft, y}, point{daysLeft + w.wide*float64(w.days), y})
	k.h = y + 3
	d.says += " " + strings.Join(rows, "; ") + "."
	c.blocks = append(c.blocks, d)
}

// wall is the axis from the first day of work to the day on which she may go in.
func (c *composer) wall(p calendar.Calendar) wall {
	first, last := midnight(p.Items[0].Start()), p.Items[len(p.Items)-1].End()
	if !p.Ready.IsZero() && c.morningOf(p.Ready).After(last) {
		last = c.morningOf(p.Ready)
	}
	if work := c.job.Boat.Work; p.Fits && work.Launch.Given() && !work.LaunchOpen.True() {
		if at := work.Begins(work.Launch, last.Location()); at.After(last) {
			last = at
		}
	}
	w := wall{first: first, from: 24}
	w.days = w.day(last) + 1
	w.wide = (daysRight - daysLeft) / float64(w.days)
	for _, it := range p.Items {
		for _, s := range it.Spans {
			w.from = min(w.from, s.From.Hour())
			w.to = max(w.to, s.From.Hour()+int(math.Ceil(s.To.Sub(s.From).Hours())))
		}
	}
	w.to = max(min(24, w.to), w.from+1)
	return w
}

// daysHead names the days on which somebody works, where there is room, and the launch.
func (c *composer) daysHead(k *canvas, w wall, p calendar.Calendar) float64 {
	worked := map[int]bool{}
	for _, it := range p.Items {
		for _, s := range it.Spans {
			worked[w.day(s.From)] = true
		}
	}
	free, month := -1.0, time.Month(0)
	for i := range w.days {
		t := w.first.AddDate(0, 0, i)
		x := daysLeft + w.wide*(float64(i)+0.5)
		if t.Month() != month {
			month = t.Month()
			if left := daysLeft + w.wide*float64(i); w.days-i > 2 || i == 0 || w.wide > 24 {
				k.bold(left, 10, start, t.Format("January"))
			}
		}
		if worked[i] {
			k.rect(daysLeft+w.wide*float64(i), 26, w.wide, 3, pen{tint: 1, width: -1})
		}
		text := t.Format("2")
		if w.wide > 24 {
			text = t.Format("Mon 2")
		}
		if half := float64(len(text)) * letterWidth / 2; (worked[i] || i == 0) && x-half > free {
			k.text(x, 23, middle, text)
			free = x + half + 3
		}
	}
	return 30
}

// daysWeather draws what the forecast says of each working hour for the coat that is next, and says it in days.
func (c *composer) daysWeather(k *canvas, w wall, turns []antifoul.Turn, p calendar.Calendar, y *float64) string {
	forecast := c.job.Boat.Weather.Forecast.Hours
	site, err := weather.At(c.job.Book, forecast, c.job.Boat.Work.Roof.True())
	if err != nil || len(forecast) == 0 {
		return ""
	}
	skies := map[int]*weather.Sky{}
	var counts [3]int
	end := 0
	for i, h := range forecast {
		at := h.At.In(w.first.Location())
		if day := w.day(at); day < 0 || day >= w.days || at.Hour() < w.from || at.Hour() >= w.to {
			continue
		}
		item := nextCoat(turns, p, at)
		if item < 0 {
			continue
		}
		if skies[item] == nil {
			skies[item] = site.For(turns[p.Items[item].Task].Layers[0].Coat)
		}
		x := w.x(at)
		wide := w.wide / float64(w.to-w.from)
		switch v := skies[item].Verdict(i); {
		case v >= finding.Needs:
			counts[2]++
			k.rect(x, *y+1, wide, daysSky-3, pen{tint: 1, width: -1})
		case v == finding.Ask || c.farOff(at):
			counts[1]++
			k.rect(x, *y+1+(daysSky-3)/2, wide, (daysSky-3)/2, pen{tint: 1, width: -1})
		default:
			counts[0]++
		}
		end = max(end, w.day(at)+1)
	}
	if end == 0 {
		return ""
	}
	k.rect(daysLeft, *y+1, w.wide*float64(end), daysSky-3, pen{})
	if rest := w.wide * float64(w.days-end); rest > 130 {
		k.text(daysLeft+w.wide*float64(end)+4, *y+daysSky-6, start, "weather not known yet")
	}
	*y += daysSky
	return fmt.Sprintf("By the forecast, of the working hours that it tells of: go %d, measure %d, no %d.", counts[0], counts[1], counts[2]) + pick(end < w.days, " After that the weather is not known yet.", "")
}

// nextCoat is the first coat of the plan that is not over at the moment; -1 when there is none.
func nextCoat(turns []antifoul.Turn, p calendar.Calendar, at time.Time) int {
	return slices.IndexFunc(p.Items, func(it calendar.Item) bool {
		return !it.Again && len(turns[it.Task].Layers) > 0 && at.Before(it.End())
	})
}

// daysBar draws one piece of work in its own row, its words on the side that has room, and says it.
func (c *composer) daysBar(k *canvas, w wall, t antifoul.Turn, it calendar.Item, y *float64) string {
	words := sentence(pick(it.Again, "abrade, the window has closed: ", "") + t.Name)
	coat := len(t.Coats) > 0 && !it.Again
	if coat {
		if outlook, _, _ := strings.Cut(c.outlook(it), ";"); it.Outlook.Air.Given() {
			words += " – " + outlook
		}
	}
	left, right := w.x(it.Start()), max(w.x(it.End()), w.x(it.Start())+3)
	from, to := left, right
	if inside := !it.Closes.IsZero() && !it.Again && !it.Closes.Before(it.Opens); inside {
		from, to = min(from, w.x(it.Opens)), max(to, min(w.x(it.Closes), daysRight))
	}
	room, side, x := daysRight-to-6, start, to+4
	if from-daysLeft > room {
		room, side, x = from-daysLeft-6, end, from-4
	}
	lines := fit(words, room)
	mid := *y + 6
	if from < left || to > right {
		k.line(pen{}, point{from, mid}, point{left, mid})
		k.line(pen{}, point{right, mid}, point{to, mid})
		k.line(pen{}, point{from, mid - 4}, point{from, mid + 4})
		k.line(pen{}, point{to, mid - 4}, point{to, mid + 4})
	}
	fill := ""
	if coat {
		fill = c.srgb(t.Coats[0].Layer.Colour)
	}
	for _, s := range it.Spans {
		a, b := w.x(s.From), w.x(s.To)
		b = max(b, a+3)
		switch {
		case coat:
			k.rect(a, *y+2, b-a, 8.5, pen{fill: fill, tint: pick[float64](fill == "", 0.6, 0)})
		case t.Yard:
			k.rect(a, *y+2, b-a, 8.5, pen{})
		default:
			k.hatch(a, *y+2, b-a, 8.5, 3, "")
			k.rect(a, *y+2, b-a, 8.5, pen{})
		}
	}
	k.lines(x, *y+lineHeight-2.5, side, lines)
	*y += max(daysRow, float64(len(lines))*(lineHeight-0.7)+1)
	return it.Start().Format("Mon 2 Jan 15:04") + ": " + words + pick(windowAndLast(it) == "", "", " ("+windowAndLast(it)+")")
}

// daysReady marks when she may go in, and the launch.
func (c *composer) daysReady(k *canvas, w wall, p calendar.Calendar, y *float64) []string {
	var out []string
	mark := func(at time.Time, full bool, words string) {
		x, mid := w.x(at), *y+6
		k.area(pick(full, pen{tint: 1}, pen{}), []point{{x, mid - 4}, {x + 4, mid}, {x, mid + 4}, {x - 4, mid}})
		if x > (daysLeft+daysRight)/2 {
			k.text(x-8, mid+3, end, words)
		} else {
			k.text(x+8, mid+3, start, words)
		}
		*y += daysRow
		out = append(out, at.Format("Mon 2 Jan 15:04")+": "+words)
	}
	if !p.Ready.IsZero() {
		mark(c.morningOf(p.Ready), false, "She may go in")
	}
	if work := c.job.Boat.Work; len(c.launchRow(p)) > 0 {
		mark(work.Begins(work.Launch, w.first.Location()), true, "Launch")
	}
	return out
}

// srgb is the colour of a key, "#rrggbb"; empty where none is known.
func (c *composer) srgb(key string) string {
	if k, err := c.job.Book.Colour(key); err == nil {
		return k.SRGB
	}
	return ""
}
