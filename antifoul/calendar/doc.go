// Package calendar answers one question: on which days does each coat go on?
//
//	plan, err := calendar.Arrange(book, tasks, days, today, calendar.Conditions{Zone: zone, Forecast: forecast})
//	for _, item := range plan.Items {            // in order, each with its hours, its window and the last moment at which it may begin
//		fmt.Println(tasks[item.Task].Name, item.Start(), item.Verdict)
//	}
//	m, err := calendar.Today(book, tasks[3], days, now, conditions)   // go, measure, wait until, or not today
//
// A window opens and closes by the clock of its coating (ClockOf): two-pack coats cure faster when it is warmer, and then the window closes sooner
// too. A plan is exact for its model: one crew does the tasks in the order of the list, on whole hours. What the model leaves out: a second
// gang that works beside the first, a coat that is parted over two days, and a blasted surface that waits for its primer.
package calendar
