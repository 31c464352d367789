package hullform

import (
	"io/fs"
	"math"
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Point is a point of a section.
type Point struct {
	Half   quantity.Length // from the centreline, nought or more
	Height quantity.Length // above any level, the same for all sections
}

// Section is the outline of one side of the hull at a station, from the centreline up to the paint line. Chines stand as points.
type Section struct {
	At     quantity.Length // along the centreline, from any point
	Points []Point         // the first on the centreline
}

type point struct{ x, y, z float64 }

// Surface returns the area of the hull in m2, both sides, over the true surface: facets between neighbouring sections, and the ends
// where the first and the last section are not points. Sections with the same number of points are joined point by point, so that
// chines stay sharp; others at equal shares of their girths, with the corners of both.
//
//	S = 2 × Σ (|a × b| ÷ 2 over the triangles) + ends
//
// Facets lie inside a round hull, so the sum is low by about the square of the distance of the stations. The same sum over every
// second station tells by how much: missed = (S − S of every second) ÷ 3. It is nought for fewer than three stations.
//
// Basis: derived (geometry; Richardson's extrapolation of a second-order rule).
func Surface(sections []Section) (area, missed float64) {
	lines := make([][]point, len(sections))
	for i, s := range sections {
		for _, p := range s.Points {
			lines[i] = append(lines[i], point{s.At.Float(quantity.Metre), p.Half.Float(quantity.Metre), p.Height.Float(quantity.Metre)})
		}
	}
	ends := 0.0
	if len(lines) > 0 {
		ends = end(lines[0]) + end(lines[len(lines)-1])
	}
	skin := facets(lines)
	if len(lines) < 3 {
		return skin + ends, 0
	}
	var second [][]point
	for i, l := range lines {
		if i%2 == 0 || i == len(lines)-1 {
			second = append(second, l)
		}
	}
	return skin + ends, (skin - facets(second)) / 3
}

// facets is the skin of both sides.
func facets(lines [][]point) float64 {
	sum := 0.0
	for i := 1; i < len(lines); i++ {
		a, b := joined(lines[i-1], lines[i])
		for k := 1; k < len(a); k++ {
			sum += triangle(a[k-1], a[k], b[k]) + triangle(a[k-1], b[k], b[k-1])
		}
	}
	return 2 * sum
}

// joined returns the two lines with a point of each for every point of the other: as they are where they have as many points, else
// cut at the shares of their girths at which either has a point, so that no corner is lost.
func joined(a, b []point) (same, other []point) {
	if len(a) == len(b) {
		return a, b
	}
	at := slices.Concat(shares(a), shares(b))
	slices.Sort(at)
	at = slices.CompactFunc(at, func(x, y float64) bool { return math.Abs(y-x) < 1e-9 })
	return cut(a, at), cut(b, at)
}

// shares is how far along its line each point lies, from 0 to 1; all are nought where the line is a point of a hull, for which any shares will do.
func shares(line []point) []float64 {
	out := make([]float64, len(line))
	for i := 1; i < len(line); i++ {
		out[i] = out[i-1] + distance(line[i-1], line[i])
	}
	whole := out[len(out)-1]
	if whole > 0 {
		for i := range out {
			out[i] /= whole
		}
	}
	return out
}

// cut returns the points of the line at the shares.
func cut(line []point, at []float64) []point {
	along := shares(line)
	out := make([]point, 0, len(at))
	for _, want := range at {
		i, _ := slices.BinarySearch(along, want)
		i = min(max(i, 1), len(line)-1)
		f := 0.0
		if step := along[i] - along[i-1]; step > 0 {
			f = (want - along[i-1]) / step
		}
		p, q := line[i-1], line[i]
		out = append(out, point{p.x, p.y + float64(f*(q.y-p.y)), p.z + float64(f*(q.z-p.z))})
	}
	return out
}

// end is the area of the flat end that the section closes, both sides: nought for a point or a stem.
func end(line []point) float64 {
	sum := 0.0
	for i := 1; i < len(line); i++ {
		sum += (line[i].z - line[i-1].z) * (line[i].y + line[i-1].y)
	}
	return math.Abs(sum)
}

func distance(a, b point) float64 {
	return math.Sqrt(float64((a.x-b.x)*(a.x-b.x)) + float64((a.y-b.y)*(a.y-b.y)) + float64((a.z-b.z)*(a.z-b.z)))
}

func triangle(a, b, c point) float64 {
	ux, uy, uz := b.x-a.x, b.y-a.y, b.z-a.z
	vx, vy, vz := c.x-a.x, c.y-a.y, c.z-a.z
	nx, ny, nz := float64(uy*vz)-float64(uz*vy), float64(uz*vx)-float64(ux*vz), float64(ux*vy)-float64(uy*vx)
	return math.Sqrt(float64(nx*nx)+float64(ny*ny)+float64(nz*nz)) / 2
}

// ReadOffsets reads sections from a CSV file with the columns "at", "half_breadth" and "height", one point a line, station by station,
// from the centreline up to the paint line. The error is a finding.Faults with every fault of the file.
func ReadOffsets(fsys fs.FS, name string) ([]Section, error) {
	var faults finding.Faults
	var out []Section
	rows := entry.Sheet(fsys, name, &faults)
	entry.Columns(rows, "at", "half_breadth", "height")
	for _, r := range rows {
		at := entry.Amount[quantity.Length](r, "at")
		p := Point{Half: entry.Amount[quantity.Length](r, "half_breadth"), Height: entry.Amount[quantity.Length](r, "height")}
		r.Need("a length, with its unit or that of the column", "at", "half_breadth", "height")
		if n := len(out); n == 0 || !out[n-1].At.Equal(at) {
			out = append(out, Section{At: at})
		}
		out[len(out)-1].Points = append(out[len(out)-1].Points, p)
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	if err := checkSections(out).Under(name, "").Err(); err != nil {
		return nil, err
	}
	return out, nil
}
