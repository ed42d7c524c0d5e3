package plan

// Demo is the plan that the page opens with: an invented carriage-house loft
// with three players and three clubs, every default filled.
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
  "version": 1,
  "title": "Carriage-house loft",
  "units": "imperial",
  "margin": 0.15,
  "room": {
    "length": 6.40, "width": 4.42, "height": 2.87,
    "slopes": [{"name": "rafters, left", "wall": "left", "kneeHeight": 2.10, "run": 0.90}],
    "solids": [{"name": "boxed beam", "min": [3.0, 0.0, 2.62], "max": [3.2, 4.42, 2.87]}]
  },
  "floor": {
    "layers": [
      {"name": "plywood", "thickness": 0.018},
      {"name": "rubber", "thickness": 0.010},
      {"name": "turf", "thickness": 0.012}
    ],
    "mat": {"thickness": 0.040, "length": 1.50, "width": 1.50, "inset": true}
  },
  "screen": {"x": 6.00, "centre": 2.21, "bottom": 0.05, "width": 3.56, "height": 2.00, "sideReturn": 1.0, "topReturn": 0.9},
  "tees": [{"name": "middle", "x": 2.90, "y": 2.21}],
  "clubs": [
    {"name": "driver", "kind": "driver", "length": 1.156, "lie": 58, "loft": 10.5, "ball": {"speed": 62, "launch": 12.5, "spin": 2700}},
    {"name": "7-iron", "kind": "iron"},
    {"name": "pitching wedge", "kind": "wedge"}
  ],
  "players": [
    {"name": "Host", "height": 1.78, "hand": "right"},
    {"name": "Tall guest", "height": 1.92, "hand": "right", "span": 2.01, "follow": "loose"},
    {"name": "Left-handed friend", "height": 1.70, "hand": "left", "clubs": ["driver", "7-iron"]}
  ],
  "hung": [{"name": "projector", "min": [2.1, 2.0, 2.45], "max": [2.5, 2.45, 2.80], "throwRatio": 0.80, "lensHeight": 2.50, "lumens": 3500}],
  "seats": [
    {"name": "stool", "x": 0.50, "y": 0.60},
    {"name": "bench", "x": 0.50, "y": 3.80}
  ]
}
`
