package form

import (
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

// Cards is the whole form, in the order of the page.
func Cards() []Card {
	return []Card{
		{ID: "room", Title: "Room", Open: true,
			Fields: []Field{
				{Path: "title", Label: "Name of this plan", Kind: Text},
				{Path: "room.length", Label: "Room length", Kind: Length, Hint: "From the back wall to the front wall, which the ball flies at."},
				{Path: "room.width", Label: "Room width", Kind: Length},
				{Path: "room.height", Label: "Ceiling height", Kind: Length, Hint: "Bare floor to ceiling; layers and mat are taken off below."},
				{Path: "margin", Label: "Clearance to call it clear", Kind: Length, Form: Short, Hint: "Anything nearer than this is called tight."},
			},
			Lists: []List{
				{Path: "room.slopes", Title: "Slopes", One: "slope", Fields: []Field{name}, More: &More{Title: "Place and size", Fields: []Field{
					{Path: "wall", Label: "Comes down at", Kind: Choice, Choices: [][2]string{{string(plan.WallLeft), "left wall"}, {string(plan.WallRight), "right wall"}, {string(plan.WallFront), "front wall"}, {string(plan.WallBack), "back wall"}}},
					{Path: "kneeHeight", Label: "Height at the wall", Kind: Length, Hint: "Where the slope meets the wall, above the bare floor."},
					{Path: "run", Label: "Reaches into the room", Kind: Length, Hint: "Level distance from the wall to where the ceiling is flat."},
				}}},
				{Path: "room.solids", Title: "Beams, ducts, columns, padding", One: "beam or duct", Fields: []Field{name}, More: &More{Title: "Place and size", Fields: append(boxFields(), cover)}},
			}},
		{ID: "players", Title: "Players", Open: true, Lists: []List{players}},
		{ID: "clubs", Title: "Clubs", Lists: []List{clubs}},
		{ID: "air", Title: "Air", Fields: []Field{
			{Path: "air.temperature", Label: "Temperature in the room", Kind: Length, Form: units.Temperature},
			{Path: "air.altitude", Label: "Height above the sea", Kind: Length, Form: units.Altitude, Hint: "Thin air slows a ball less."},
		}},
		{ID: "tees", Title: "Tees", Lists: []List{{Path: "tees", Title: "Tees", One: "tee", Bare: true, Duplicate: true, Fields: []Field{
			name,
			{Path: "x", Label: "From the back wall", Kind: Length, Hint: "To the ball."},
			{Path: "y", Label: "From the right wall", Kind: Length, Hint: "To the ball; the right wall as you face the target."},
		}}}},
		{ID: "floor", Title: "Floor and mat",
			Lists: []List{{Path: "floor.layers", Title: "Floor layers", One: "layer", Fields: []Field{
				name,
				{Path: "thickness", Label: "Thickness", Kind: Length},
			}}},
			Parts: []Part{{Path: "floor.mat", Title: "Hitting mat", Fields: []Field{
				{Path: "thickness", Label: "Mat thickness", Kind: Length},
				{Path: "length", Label: "Mat length", Kind: Length, Optional: true},
				{Path: "width", Label: "Mat width", Kind: Length, Optional: true},
				{Path: "inset", Label: "Set in, flush with the floor around it", Kind: Check},
			}}}},
		{ID: "screen", Title: "Screen", Parts: []Part{{Path: "screen", Title: "Impact screen", Fields: []Field{
			{Path: "x", Label: "Screen, from the back wall", Kind: Length},
			{Path: "centre", Label: "Middle, from the right wall", Kind: Length},
			{Path: "bottom", Label: "Bottom edge, above the floor", Kind: Length},
			{Path: "width", Label: "Screen width", Kind: Length},
			{Path: "height", Label: "Screen height", Kind: Length},
			{Path: "sideReturn", Label: "Side returns, depth", Kind: Length, Optional: true},
			{Path: "topReturn", Label: "Top return, depth", Kind: Length, Optional: true},
		}}}},
		{ID: "hung", Title: "Hung things", Lists: []List{{Path: "hung", Title: "Hung things", One: "hung thing", Bare: true, Duplicate: true, Fields: []Field{name}, More: box}}},
		{ID: "seats", Title: "Seats", Lists: []List{{Path: "seats", Title: "Seats", One: "seat", Bare: true, Duplicate: true, Fields: []Field{
			name,
			{Path: "x", Label: "From the back wall", Kind: Length, Hint: "To its middle."},
			{Path: "y", Label: "From the right wall", Kind: Length},
			{Path: "radius", Label: "Half its width", Kind: Length, Optional: true},
		}}}},
		{ID: "sensor", Title: "Ball sensor", Parts: []Part{{Path: "sensor", Title: "Floor strip that a ball sensor reads",
			Fields: append([]Field{{Path: "name", Label: "Sensor name", Kind: Text}}, boxFields()[:4]...)}}},
	}
}

var name = Field{Path: "name", Label: "Name", Kind: Text}

// box is the place and size of what is a box.
var box = &More{Title: "Place and size", Fields: boxFields()}

// boxFields are the six faces of a box: where it starts and ends along each axis.
func boxFields() []Field {
	return []Field{
		{Path: "min[0]", Label: "Starts, from the back wall", Kind: Length},
		{Path: "max[0]", Label: "Ends, from the back wall", Kind: Length},
		{Path: "min[1]", Label: "Starts, from the right wall", Kind: Length},
		{Path: "max[1]", Label: "Ends, from the right wall", Kind: Length},
		{Path: "min[2]", Label: "Underside, above the floor", Kind: Length},
		{Path: "max[2]", Label: "Top, above the floor", Kind: Length},
	}
}

// cover is what a ball meets of a solid; golfer and club must clear it all the same.
var cover = Field{Path: "cover", Label: "A ball meets", Kind: Choice, Choices: [][2]string{{"", "it bare and hard"}, {plan.CoverFoam, "foam"}, {plan.CoverCloth, "hung cloth"}}}

var players = List{Path: "players", Title: "Players", One: "player", Bare: true, Duplicate: true,
	Fields: []Field{
		name,
		{Path: "height", Label: "Height", Kind: Length},
		{Path: "hand", Label: "Hand", Kind: Choice, Choices: [][2]string{{string(plan.HandRight), "right-handed"}, {string(plan.HandLeft), "left-handed"}}},
	},
	More: &More{Title: "Build and swing",
		Fields: []Field{
			{Path: "span", Label: "Arm span", Kind: Length, Optional: true, Hint: "Fingertip to fingertip; blank: guessed from height."},
			{Path: "arm", Label: "Shoulder to grip", Kind: Length, Optional: true, Hint: "Top of the shoulder to the middle of the grip; blank: guessed."},
			{Path: "ballToToes", Label: "Ball to toes, driver", Kind: Length, Optional: true, Hint: "Take your driver, address a ball on the floor, and have somebody measure along the floor from the ball to the line of your toes; blank: worked out."},
			{Path: "ballToHands", Label: "Ball to hands, driver", Kind: Length, Optional: true, Hint: "The same, straight back and level, from the ball to the middle of your hands (drop a plumb line); blank: worked out."},
			{Path: "shoe", Label: "Shoe sole", Kind: Length, Optional: true, Hint: "Adds to the height of the shoulders."},
			{Path: "turn", Label: "Turn", Kind: Choice, Choices: as(plan.TurnCompact, plan.TurnFull, plan.TurnLong), Hint: "How far the shoulders go back."},
			{Path: "plane", Label: "Plane", Kind: Choice, Choices: as(plan.PlaneUpright, plan.PlaneNeutral, plan.PlaneFlat), Hint: "How steep the swing is."},
			{Path: "follow", Label: "Follow-through", Kind: Choice, Choices: [][2]string{{plan.FollowHeld, "held off"}, {plan.FollowFull, "full"}, {plan.FollowLoose, "loose"}}, Hint: "How wide and loose the finish is."},
			{Path: "skill", Label: "Spread of shots", Kind: Choice, Choices: as(plan.SkillSteady, plan.SkillAverage, plan.SkillWild), Hint: "How far the ball strays from shot to shot."},
			{Path: "sex", Label: "Proportions", Kind: Choice, Choices: [][2]string{{"", "anyone"}, {plan.SexMan, "man"}, {plan.SexWoman, "woman"}}},
		},
		Members: []Member{{"clubs", "Swings these clubs", "clubs"}, {"tees", "Plays from these tees", "tees"}},
	}}

var clubs = List{Path: "clubs", Title: "Clubs", One: "club", Bare: true, Duplicate: true, Fields: []Field{
	name,
	{Path: "kind", Label: "Kind", Kind: Choice, Choices: [][2]string{{plan.KindDriver, "driver"}, {plan.KindWood, "fairway wood"}, {plan.KindHybrid, "hybrid"}, {plan.KindIron, "iron"}, {plan.KindWedge, "wedge"}}},
	{Path: "length", Label: "Length", Kind: Length, Form: Short, Optional: true, Hint: "Blank: usual for the kind."},
}, More: &More{Title: "Lie, loft and ball", Fields: []Field{
	{Path: "lie", Label: "Lie", Kind: Number, Unit: "degrees", Optional: true, Hint: "blank: usual for the kind"},
	{Path: "loft", Label: "Loft", Kind: Number, Unit: "degrees", Optional: true, Hint: "blank: usual for the kind"},
	{Path: "ball.speed", Label: "Ball speed", Kind: Length, Form: units.Speed, Optional: true, Hint: "Blank or usual: each player's own swing sets it. Measured: type it."},
	{Path: "ball.launch", Label: "Launch angle", Kind: Number, Unit: "degrees", Hint: "above level, struck well"},
	{Path: "ball.spin", Label: "Backspin", Kind: Number, Unit: "rev/min"},
}}}

// as are choices whose words are their values.
func as(words ...string) [][2]string {
	out := make([][2]string, len(words))
	for i, w := range words {
		out[i] = [2]string{w, w}
	}
	return out
}
