// Package weather answers one question: may paint go on in this hour?
//
//	f, err := weather.ReadCSV(book, files, "yard.csv", place)        // hours, or days with low and high, by the clock of the place
//	site, err := weather.At(book, f.Hours, false)                   // in the open
//	sky := site.For(weather.Coat{Coating: paint, On: materials, By: roller})
//	for i := range sky.Len() {
//		fmt.Println(f.Hours[i].At, sky.Verdict(i), sky.Wets(i))     // fine, ask (measure first) or forbidden; would a fresh film be wetted?
//	}
//	for _, why := range sky.Why(0) {                                // every reason, made when it is asked for
//		text := book.Say(why, quantity.Metric)
//	}
//
// Of one hour that was measured at the work Judge says the same without a site. What is not known is Unknown, and is asked for: it is never taken as
// right. A surface that was not measured is estimated from the air, by how slowly what she is built of follows it; where the estimate and its error straddle a
// limit, the answer is to measure.
//
//	WMO-No. 8, annex 4.B        dew point                           DewPoint, Humidity; rows wmo-no-8-b, -c
//	ISO 8502-4                  3 degC over the dew point           Judge, Sky; row iso-8502-4-spread
//	ISO 12944-7                 85 % of humidity                    Judge, Sky; row iso-12944-7-humidity
//	FAO-56, equation 48         dew point from the day's low        ReadCSV, Hourly
//	de Wit and others 1978      hours from a day's low and high     Hourly; rows day-low-hour, day-high-hour
//	ISO 6946                    film coefficients behind the lags   column lag of materials.toml
//
// Not covered: sun on the bottom and the cold of a clear night sky, which move a surface by more than the error of row surface-error; gusts; how long a
// fresh film must stay dry, which is a question of days.
package weather
