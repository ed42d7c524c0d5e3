package plan

// Demo is the plan that the page opens with: an invented carriage-house loft
// with three players and three clubs, every default filled. One of the eight checks
// strikes, the tall guest's driver at the rafters, and one step of the tee to the
// right puts it right for everybody. Its lengths are round in feet and inches.
func Demo() Plan {
	p, err := Parse([]byte(demoJSON))
	if err != nil {
		panic("plan: the built-in demo does not parse: " + err.Error())
	}
	return p.Plan()
}

// demoJSON is a literal, not an embedded file, because package embed brings the
// file system and the clock along: 43 kB more to download before the first
// answer.
const demoJSON = `{
  "version": 2,
  "title": "Carriage-house loft",
  "units": "imperial",
  "room": {
    "length": 6.4008, "width": 5.4864, "height": 3.2004,
    "slopes": [{"name": "rafters, left", "wall": "left", "kneeHeight": 2.1336, "run": 1.2192}],
    "solids": [{"name": "boxed beam", "min": [3.6576, 0, 2.8956], "max": [3.8608, 5.4864, 3.2004]}]
  },
  "floor": {
    "layers": [
      {"name": "plywood", "thickness": 0.0191},
      {"name": "rubber", "thickness": 0.0095},
      {"name": "turf", "thickness": 0.0127}
    ],
    "mat": {"thickness": 0.0381, "inset": true}
  },
  "screen": {"x": 5.9944, "centre": 2.7432, "bottom": 0.0508, "width": 3.6576, "height": 2.286, "sideReturn": 0.9144, "topReturn": 0.9144},
  "tees": [{"name": "middle", "x": 2.8956, "y": 2.7432}],
  "clubs": [
    {"name": "driver", "kind": "driver"},
    {"name": "7-iron", "kind": "iron"},
    {"name": "pitching wedge", "kind": "wedge"}
  ],
  "players": [
    {"name": "Host", "height": 1.778},
    {"name": "Tall guest", "height": 1.9304, "span": 2.0066, "follow": "loose"},
    {"name": "Left-handed friend", "height": 1.7018, "hand": "left", "clubs": ["driver", "7-iron"]}
  ],
  "hung": [{"name": "projector", "min": [2.1336, 2.5908, 2.8194], "max": [2.5146, 2.8956, 3.0734], "throwRatio": 0.95, "lensHeight": 2.8702, "lumens": 3500}],
  "seats": [
    {"name": "stool", "x": 0.6096, "y": 0.6096},
    {"name": "bench", "x": 0.6096, "y": 4.572}
  ],
  "projector": {"lens": [2.5146, 2.7432, 2.8702], "throwRatio": [0.9, 1.1], "aspect": 1.7778, "lumens": 3500, "offset": [0.1, 0.5], "body": [0.381, 0.3048, 0.2032], "roomLight": 20, "riskGroup": "RG2", "image": {"bottom": 0.0508}},
  "build": {
    "cups": [{"x": 4.8768, "y": 0.9144}, {"x": 1.2192, "y": 4.4196}],
    "wiring": {"source": [0.6096, 0.3048, 0.762], "receptacles": 3},
    "finish": {"absorber": 6}
  }
}
`
