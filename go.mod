module boatyard.example/bottomwork

go 1.26

require (
	github.com/BurntSushi/toml v1.6.0
	github.com/google/go-cmp v0.7.0
	github.com/shopspring/decimal v1.6.0
)
