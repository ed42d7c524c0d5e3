package plan

// Rooms are plans to start from, for those whose room is nothing like the demo's:
// rooms as they are usually built, with numbers of our own, and the people and
// clubs of the demo. Each has a title of its own and every default filled.
func Rooms() []Plan {
	var out []Plan
	for _, room := range roomsJSON {
		p, err := Parse([]byte(`{"version":1,` + room + `,` + floorAndPeople + `}`))
		if err != nil {
			panic("plan: a built-in room does not parse: " + err.Error())
		}
		out = append(out, p.Plan())
	}
	return out
}

const floorAndPeople = `"units":"imperial","margin":0.15,
"floor":{"layers":[{"name":"plywood","thickness":0.018},{"name":"turf","thickness":0.012}],"mat":{"thickness":0.03,"length":1.5,"width":1.5,"inset":true}},
"clubs":[{"name":"driver","kind":"driver"},{"name":"7-iron","kind":"iron"},{"name":"pitching wedge","kind":"wedge"}],
"players":[{"name":"Host","height":1.78},{"name":"Left-handed friend","height":1.70,"hand":"left"}]`

var roomsJSON = []string{
	// The door is behind the golfer; its tracks run along both walls, its opener
	// hangs in the middle.
	`"title":"Single garage bay","room":{"length":6.4,"width":3.66,"height":2.95,
"solids":[{"name":"left door track","min":[0,3.3,2.3],"max":[2.6,3.4,2.42]},{"name":"right door track","min":[0,0.26,2.3],"max":[2.6,0.36,2.42]}]},
"screen":{"x":6,"centre":1.83,"bottom":0.05,"width":3.2,"height":2.3,"sideReturn":0.8,"topReturn":0.6},
"tees":[{"name":"middle","x":3.1,"y":1.83}],
"hung":[{"name":"door opener","min":[0.3,1.68,2.6],"max":[0.8,1.98,2.9]}]`,

	// Room for a tee for each hand; a beam carries the floor above.
	`"title":"Double garage bay","room":{"length":6.7,"width":6.1,"height":2.9,
"solids":[{"name":"beam","min":[0,2.95,2.65],"max":[6.7,3.15,2.9]},{"name":"post","min":[0.5,2.98,0],"max":[0.62,3.1,2.65]}]},
"screen":{"x":6.3,"centre":3.05,"bottom":0.05,"width":4.6,"height":2.5,"sideReturn":0.6,"topReturn":0.5},
"tees":[{"name":"right-handers","x":3.4,"y":2.2},{"name":"left-handers","x":3.4,"y":3.9}],
"seats":[{"name":"bench","x":0.5,"y":5.5}]`,

	`"title":"Basement with a duct","room":{"length":7.3,"width":4.6,"height":2.6,
"solids":[{"name":"duct","min":[0,0,2.1],"max":[7.3,0.6,2.6]},{"name":"steel post","min":[1.2,3.9,0],"max":[1.3,4,2.6]}]},
"screen":{"x":6.9,"centre":2.5,"bottom":0.05,"width":3.6,"height":2.2,"sideReturn":0.9,"topReturn":0.5},
"tees":[{"name":"middle","x":3.9,"y":2.5}],
"seats":[{"name":"sofa","x":0.6,"y":2.3,"radius":0.5}]`,

	`"title":"Attic with rafters","room":{"length":7,"width":6,"height":3.1,
"slopes":[{"name":"rafters, left","wall":"left","kneeHeight":1.2,"run":2},{"name":"rafters, right","wall":"right","kneeHeight":1.2,"run":2}],
"solids":[{"name":"collar tie","min":[1.0,1.7,2.75],"max":[1.1,4.3,2.9]}]},
"screen":{"x":6.6,"centre":3,"bottom":0.05,"width":3.2,"height":2.1,"sideReturn":0.9,"topReturn":0.6},
"tees":[{"name":"under the ridge","x":3.6,"y":3}]`,

	`"title":"Shed","room":{"length":5.5,"width":3.6,"height":2.9,
"slopes":[{"name":"roof, left","wall":"left","kneeHeight":2.2,"run":1.8},{"name":"roof, right","wall":"right","kneeHeight":2.2,"run":1.8}]},
"screen":{"x":5.2,"centre":1.8,"bottom":0.05,"width":3.2,"height":2.0,"sideReturn":0.7},
"tees":[{"name":"middle","x":2.7,"y":1.8}]`,

	// The closed corner behind the golfer makes an L of a rectangle; a ledge runs
	// along the far wall.
	`"title":"L-shaped room","room":{"length":7.6,"width":6,"height":2.85,
"solids":[{"name":"closed corner","min":[0,4.1,0],"max":[3,6,2.85]},{"name":"ledge","min":[0,0,0],"max":[7.6,0.25,0.9]}]},
"screen":{"x":7.2,"centre":2.4,"bottom":0.05,"width":3.6,"height":2.4,"sideReturn":0.9,"topReturn":0.6},
"tees":[{"name":"middle","x":4.2,"y":2.4}],
"hung":[{"name":"lamp","min":[1.8,2.2,2.55],"max":[2,2.4,2.85]},{"name":"fan","min":[5.2,4.6,2.5],"max":[6.2,5.6,2.85]}],
"seats":[{"name":"armchair","x":6.3,"y":5.4,"radius":0.45},{"name":"stool","x":0.5,"y":1.2}]`,
}
