package plan

// Rooms are plans to start from, for those whose room is nothing like the demo's:
// rooms as they are usually built, with numbers of our own in whole inches, and the
// people and clubs of the demo. Each has a title of its own and every default filled.
func Rooms() []Plan {
	var out []Plan
	for _, room := range roomsJSON {
		p, err := Parse([]byte(`{"version":2,` + room + `,` + floorAndPeople + `}`))
		if err != nil {
			panic("plan: a built-in room does not parse: " + err.Error())
		}
		out = append(out, p.Plan())
	}
	return out
}

const floorAndPeople = `"units":"imperial","margin":0.1524,
"floor":{"layers":[{"name":"plywood","thickness":0.01905},{"name":"turf","thickness":0.0127}],"mat":{"thickness":0.03175,"length":1.524,"width":1.524,"inset":true}},
"clubs":[{"name":"driver","kind":"driver"},{"name":"7-iron","kind":"iron"},{"name":"pitching wedge","kind":"wedge"}],
"players":[{"name":"Host","height":1.778},{"name":"Left-handed friend","height":1.7018,"hand":"left"}]`

var roomsJSON = []string{
	// The door is behind the golfer; its tracks run along both walls, its opener
	// hangs in the middle.
	`"title":"Single garage bay","room":{"length":6.4008,"width":3.6576,"height":2.9464,
"solids":[{"name":"left door track","min":[0,3.302,2.3114],"max":[2.5908,3.4036,2.413]},{"name":"right door track","min":[0,0.254,2.3114],"max":[2.5908,0.3556,2.413]}]},
"screen":{"x":5.9944,"centre":1.8288,"bottom":0.0508,"width":3.2004,"height":2.3114,"sideReturn":0.7874,"topReturn":0.6096},
"tees":[{"name":"middle","x":3.0988,"y":1.8288}],
"hung":[{"name":"door opener","min":[0.3048,1.6764,2.5908],"max":[0.7874,1.9812,2.8956]}]`,

	// Room for a tee for each hand; a beam carries the floor above.
	`"title":"Double garage bay","room":{"length":6.7056,"width":6.096,"height":2.8956,
"solids":[{"name":"beam","min":[0,2.9464,2.6416],"max":[6.7056,3.1496,2.8956]},{"name":"post","min":[0.508,2.9718,0],"max":[0.6096,3.0988,2.6416]}]},
"screen":{"x":6.2992,"centre":3.048,"bottom":0.0508,"width":4.5974,"height":2.4892,"sideReturn":0.6096,"topReturn":0.508},
"tees":[{"name":"right-handers","x":3.4036,"y":2.2098},{"name":"left-handers","x":3.4036,"y":3.9116}],
"seats":[{"name":"bench","x":0.508,"y":5.5118}]`,

	`"title":"Basement with a duct","room":{"length":7.2898,"width":4.5974,"height":2.5908,
"solids":[{"name":"duct","min":[0,0,2.1082],"max":[7.2898,0.6096,2.5908]},{"name":"steel post","min":[1.1938,3.9116,0],"max":[1.2954,3.9878,2.5908]}]},
"screen":{"x":6.9088,"centre":2.4892,"bottom":0.0508,"width":3.6068,"height":2.2098,"sideReturn":0.889,"topReturn":0.508},
"tees":[{"name":"middle","x":3.9116,"y":2.4892}],
"seats":[{"name":"sofa","x":0.6096,"y":2.3114,"radius":0.508}]`,

	`"title":"Attic with rafters","room":{"length":7.0104,"width":5.9944,"height":3.0988,
"slopes":[{"name":"rafters, left","wall":"left","kneeHeight":1.1938,"run":2.0066},{"name":"rafters, right","wall":"right","kneeHeight":1.1938,"run":2.0066}],
"solids":[{"name":"collar tie","min":[0.9906,1.7018,2.7432],"max":[1.0922,4.2926,2.8956]}]},
"screen":{"x":6.604,"centre":2.9972,"bottom":0.0508,"width":3.2004,"height":2.1082,"sideReturn":0.889,"topReturn":0.6096},
"tees":[{"name":"under the ridge","x":3.6068,"y":2.9972}]`,

	`"title":"Shed","room":{"length":5.5118,"width":3.6068,"height":2.8956,
"slopes":[{"name":"roof, left","wall":"left","kneeHeight":2.2098,"run":1.8034},{"name":"roof, right","wall":"right","kneeHeight":2.2098,"run":1.8034}]},
"screen":{"x":5.207,"centre":1.8034,"bottom":0.0508,"width":3.2004,"height":2.0066,"sideReturn":0.7112},
"tees":[{"name":"middle","x":2.6924,"y":1.8034}]`,

	// The closed corner behind the golfer makes an L of a rectangle; a ledge runs
	// along the far wall.
	`"title":"L-shaped room","room":{"length":7.5946,"width":5.9944,"height":2.8448,
"solids":[{"name":"closed corner","min":[0,4.0894,0],"max":[2.9972,5.9944,2.8448]},{"name":"ledge","min":[0,0,0],"max":[7.5946,0.254,0.889]}]},
"screen":{"x":7.1882,"centre":2.3876,"bottom":0.0508,"width":3.6068,"height":2.3876,"sideReturn":0.889,"topReturn":0.6096},
"tees":[{"name":"middle","x":4.191,"y":2.3876}],
"hung":[{"name":"lamp","min":[1.8034,2.2098,2.54],"max":[2.0066,2.3876,2.8448]},{"name":"fan","min":[5.207,4.5974,2.4892],"max":[6.1976,5.588,2.8448]}],
"seats":[{"name":"armchair","x":6.2992,"y":5.4102,"radius":0.4572},{"name":"stool","x":0.508,"y":1.1938}]`,
}
