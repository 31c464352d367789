package antifoul_test
import ("testing";"testing/fstest";"fmt";"boatyard.example/bottomwork/antifoul";"boatyard.example/bottomwork/tables")
const ones = `
[[price]]
key = "wage"
of = "labour"
by = "yard"
per = "h"
price = "1 EUR"
basis = "invented"
`
func TestZZ(t *testing.T){
	b,_:=tables.Default().With(fstest.MapFS{"own.toml":{Data:[]byte(ones)}})
	x,err:=antifoul.ReadBoatWith(b,fstest.MapFS{"boat.toml":{Data:[]byte(sheet)}},"boat.toml")
	if err!=nil{t.Fatal(err)}
	j,err:=antifoul.Plan(b,x)
	if err!=nil{t.Fatal(err)}
	for _,l:=range j.Costs.Yard.Lines{fmt.Println(l.Of,"|",l.What,"|",l.Name,"|",l.Unit,"|",l.Amount.Low,l.Amount.Typical,l.Amount.High,"|",l.Known)}
	fmt.Println(j.Hours,j.Days,j.Costs.OwnHours,j.Waste)
	for _,x:=range j.Costs.Types{fmt.Println(x.Coating.Key,x.Rank,x.Tier,x.Every,x.Jobs,x.Lacks,x.AYear)
	for _,bl:=range []string{"F","L","B"}{ k:=x.First; if bl=="L"{k=x.Later}; if bl=="B"{k=x.Between}
	for _,l:=range k.Lines{fmt.Println("   ",bl,l.Of,"|",l.What,"|",l.Name,"|",l.Unit,"|",l.Amount.Low,l.Amount.Typical,l.Amount.High)}}}
	for _,g:=range j.Buy{fmt.Println(g.Coating.Key,g.Colour,g.Total,g.Range,g.Thinner)}
	for _,s:=range j.Schemes{fmt.Println(s.Part,s.Route.Steps,s.Stack); for _,k:=range s.Coats{fmt.Println("  ",k.Layer.Coating.Key,k.Layer.For,k.Layer.Coats,k.Area,k.Litres)}}
}
