// Package calendar answers one question: on which days does each coat go on?
//
// What stands so far is what the days allow: the launch date, whether it may slip, and how long a new film would stand dry
// before it is wet. Planning of days against windows and weather is not covered yet.
//
//	d := calendar.Days{Launch: launch, Hands: 2}
//	days, known := d.Dry(painted)   // days in the air between the last coat and launch
package calendar
