package calendar_test

import (
	"fmt"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Two coats on a weekend, sixteen hours apart at 20 degC, under a roof and without a forecast: each rests on a measurement in the morning.
func ExampleArrange() {
	b := tables.Default()
	paint, _ := b.Coating("ablative-cuprous-multi")
	grp, _ := b.Material("grp")
	coat := calendar.Layer{Coat: weather.Coat{Coating: paint, On: []tables.Material{grp}}, Opens: quantity.Hour.N(16)}
	tasks := []calendar.Task{
		{Name: "wash", Hours: 2},
		{Name: "first coat", Hours: 2, Layers: []calendar.Layer{coat}},
		{Name: "second coat", Hours: 2, Layers: []calendar.Layer{coat}},
	}
	days := calendar.Days{Hands: 2, Weekdays: []time.Weekday{time.Saturday, time.Sunday}, Start: calendar.UsualStart, Stop: calendar.UsualStop, Roof: quantity.Yes}
	from, _ := quantity.NewDate(2027, 4, 16)
	plan, err := calendar.Arrange(b, tasks, days, from, calendar.Conditions{Usual: quantity.Celsius.N(20)})
	for _, item := range plan.Items {
		fmt.Println(tasks[item.Task].Name, calendar.Moment(item.Start()), item.Verdict)
	}
	fmt.Println(plan.Days, "days,", plan.Measure, "coats to measure for,", err)
	// Output:
	// wash Sat 17 Apr 2027, 09:00 fine
	// first coat Sat 17 Apr 2027, 11:00 ask
	// second coat Sun 18 Apr 2027, 09:00 ask
	// 2 days, 2 coats to measure for, <nil>
}
