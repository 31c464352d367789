// Package drag answers one question: what does growth cost?
//
// A grade of fouling is a roughness, its roughness raises the friction of the hull, and friction is a share of her resistance. The
// rise of friction follows from length, speed and roughness by Granville's similarity method. The share does not: it is a working
// value of this module, by speed and length.
//
//	hull := drag.Hull{Length: quantity.Metre.N(10), Speed: quantity.Knot.N(6), Water: "salt"}
//	line, err := drag.Friction(book, hull)                     // smooth: Reynolds number, two friction lines
//	cost, err := drag.Penalty(book, hull, "schultz-heavy-slime") // more resistance and power, and what to do
//	costs, err := drag.Costs(book, hull)                       // every grade, the smoothest first
//
//	question                               source                            file
//	friction of a smooth plate             ITTC 1957; Schoenherr 1932        line.go
//	friction of a rough plate              Granville 1958, 1987              line.go
//	roughness of each grade                Schultz 2007                      tables/data/published/schultz-2007.toml
//	friction's share of the resistance     assumption                        hull.go, tables/data/factors_drag.toml
//	what each grade costs, and what to do  Schultz 2007; common practice     cost.go, tables/data/rules_drag.toml
//
// Not covered: how fast anything grows; growth on propeller, keel and rudder for itself; growth in patches; money.
package drag
