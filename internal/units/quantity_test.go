package units

import "testing"

func TestQuantities(t *testing.T) {
	for _, c := range []struct {
		name, kind, text, units string
		want                    float64
		label                   string
	}{
		{"mph", Speed, "139", Imperial, 62.139, "139 mph"},
		{"m/s in an imperial plan", Speed, "62 m/s", Imperial, 62, "138.7 mph"},
		{"decimal comma", Speed, "62,5", Metric, 62.5, "62.5 m/s"},
		{"km/h", Speed, "216 km/h", Metric, 60, "60 m/s"},
		{"Fahrenheit", Temperature, "50", Imperial, 10, "50 °F"},
		{"frost", Temperature, "-5 °C", Metric, -5, "−5 °C"},
		{"what a label says, read back", Temperature, "−5 °C", Metric, -5, "−5 °C"},
		{"a mile up", Altitude, "5,280 ft", Imperial, 1609.3, "5280 ft"},
		{"altitude in metres", Altitude, "300 m", Imperial, 300, "984 ft"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := ParseQuantity(c.kind, c.text, c.units)
			if err != nil || got != c.want {
				t.Errorf("ParseQuantity(%q) = %v, %v, want %v", c.text, got, err, c.want)
			}
			if label := LabelQuantity(c.kind, got, c.units); label != c.label {
				t.Errorf("LabelQuantity(%v) = %q, want %q", got, label, c.label)
			}
		})
	}
	for _, c := range []struct{ name, kind, text, want string }{
		{"a word", Speed, "fast", `“fast” is not a speed: write it as 139 mph`},
		{"a wrong unit", Speed, "62 furlongs", `“62 furlongs” has a unit that is not known here: write it as 139 mph`},
		{"a speed for a temperature", Temperature, "20 mph", `“20 mph” has a unit that is not known here: write it as 68 °F`},
		{"a temperature for an altitude", Altitude, "20 °C", `“20 °C” has a unit that is not known here: write it as 1000 ft`},
		{"nothing", Altitude, "", `“” is not an altitude: write it as 1000 ft`},
	} {
		t.Run(c.name, func(t *testing.T) {
			if v, err := ParseQuantity(c.kind, c.text, Imperial); err == nil || err.Error() != c.want {
				t.Errorf("ParseQuantity(%q) = %v, %v, want %s", c.text, v, err, c.want)
			}
		})
	}
}
