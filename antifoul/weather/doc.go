// Package weather answers one question: may paint go on in this hour?
//
//	dew, err := weather.DewPoint(book, 15, 80)                      // 11.58 degC
//	h := weather.Hour{AirC: 15, SurfaceC: 13, HumidityPct: 80, RainMM: 0, WindMS: weather.Unknown}
//	for _, f := range weather.Judge(book, coating, h) {             // the surface is only 1.4 degC above the dew point
//		text := book.Say(f, quantity.Metric)
//	}
//
// Temperatures are those of the air and of the surface that is painted, measured on its coldest part. What is not measured is Unknown, and is
// asked for: it is never taken as right.
//
// Not covered yet: forecasts, a surface temperature that is estimated, rain before a coat is rain-safe, and days.
package weather
