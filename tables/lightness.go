package tables

import (
	"math"
	"strconv"
	"strings"
)

// lightness returns the CIE 1976 L* of a colour written "#rrggbb", 0 black to 100 white, to one decimal:
//
//	each channel c, 0 to 1, made linear: c / 12.92 up to 0.04045, else ((c + 0.055) / 1.055)^2.4
//	Y = 0.2126 R + 0.7152 G + 0.0722 B
//	L* = 116 Y^(1/3) − 16, or 24389/27 × Y up to Y = 216/24389
//
// ok is false for any other text. Basis: IEC 61966-2-1 and CIE 15, from memory.
func lightness(srgb string) (light float64, ok bool) {
	digits, ok := strings.CutPrefix(srgb, "#")
	n, err := strconv.ParseUint(digits, 16, 64)
	if !ok || len(digits) != 6 || err != nil {
		return light, false
	}
	y := float64(0.2126*linear(n>>16)) + float64(0.7152*linear(n>>8)) + float64(0.0722*linear(n))
	light = y * 24389 / 27
	if y > 216.0/24389 {
		light = float64(116*math.Cbrt(y)) - 16
	}
	return math.Round(light*10) / 10, true
}

// linear returns the light of the low eight bits of a channel, 0 to 1.
func linear(channel uint64) float64 {
	c := float64(channel&0xff) / 255
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}
