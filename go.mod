module taperwright

go 1.26.0

require (
	github.com/BurntSushi/toml v1.6.0
	github.com/pelletier/go-toml/v2 v2.4.3
	github.com/peterstace/simplefeatures v0.50.0
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.3
	github.com/sergi/go-diff v1.4.0
	github.com/spf13/cobra v1.10.2
	github.com/stretchr/testify v1.12.1
	github.com/toml-lang/toml-test/v2 v2.2.0
	pgregory.net/rapid v1.3.0
)

require (
	github.com/inconshreveable/mousetrap v1.1.0 // indirect
	github.com/spf13/pflag v1.1.0 // indirect
	go.yaml.in/yaml/v3 v3.0.5 // indirect
	golang.org/x/text v0.23.0 // indirect
)
