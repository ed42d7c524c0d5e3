package build

// Rule is where a figure of the report comes from.
type Rule struct {
	ID     string `json:"id"`
	Says   string `json:"says"`
	Source string `json:"source"`
	Status Status `json:"status"`
}

// rules are named after the figures that they give.
var rules = []Rule{
	{"image", "The largest rectangle of the aspect within the cloth, less padding, sill and border: the height limits if the cloth is wider than the aspect, else the width.", "arithmetic", Computed},
	{"border", "Cloth that stays blank: as much above as below unless the plan says where the image starts.", "arithmetic", Computed},
	{"around", "From the cloth to the wall behind it 12–18 in are usual, free to move: a driver's ball pushes it back 6–12 in.", "common practice", Practice},
	{"view", "Angles from the eye to both edges of the image, level with its middle. 3.2 image heights (31° wide) is where a pixel of 1,920 is a minute of arc.", "ITU-R BT.1845", FromMemory},
	{"throw", "Throw distance, lens to cloth, is throw ratio × image width.", "definition; IEC 62471-5 uses the same", AsRead},
	{"offset", "From the lens axis to the image, in shares of its height. Convention A counts to the nearest edge, B to the farthest: 15 % of A is 115 % of B.", "both conventions are in use", FromMemory},
	{"shift", "How far the image's middle may be moved from the lens axis while it stays a rectangle; more of one direction leaves less of the other. Keystone correction, tilting and two projectors are not modelled.", "common practice", Practice},
	{"luminance", "Rated lumens × gain / (π × area in m²) on a flat diffuse screen; one foot-lambert is 3.4263 cd/m². In use expect 60–75 % of the rated light.", "definition; the share is common practice", Computed},
	{"cinema", "A digital cinema shows white at 48 cd/m² (14 fL) in the dark.", "SMPTE ST 431-1:2006, in a text that describes it", AsRead},
	{"contrast", "White and stray light over stray light; 7:1 for passive viewing, 15:1 for basic decisions.", "ANSI/INFOCOMM 3M-2011, the ratios", FromMemory},
	{"shadow", "Rays from the lens to 240 columns of the image, against every part of golfer and club in the usual swing, 240 moments a second; the darkest moment from the tee where it is darkest. Other swings of the same player may cut more.", "this program's model", Computed},
	{"unshaded", "No part of any modelled swing, 256 and the corners beyond them, gets into the light, found cautiously from above.", "this program's model", Computed},
	{"clearance", "From the projector's case to the nearest of all modelled swings, as the check of the swing finds it.", "this program's model", Computed},
	{"region", "Lens heights at which the case is the margin away from swings and ordinary balls, within the stated offset, and nothing built in cuts the light's top edge; and the height above which nobody's usual swing reaches the light.", "this program's model", Computed},
	{"stack", "The middle of every layer's range added up; the tolerance is half of all ranges together, if every layer is at its end.", "APA table of performance category and thickness (US PS 1, PS 2); rubber, foam and turf ± a tenth are an assumption", AsRead},
	{"headroom", "Ceiling less the floor with every layer at its thickest; the verdict is that of the whole check with that floor.", "this program's model", Computed},
	{"panels", "Courses of 48 × 96 in sheets with 1/8 in between, every other course started with half a sheet, around the cut-out of the mat; cut pieces are nested with straight cuts.", "APA, the gap", FromMemory},
	{"turf", "Whole strips from one side.", "arithmetic", Computed},
	{"step", "One riser may be 7 3/4 in at most.", "IRC R311.7.5", AsRead},
	{"putt", "The longest straight line to the middle of the cup that meets no seam of the top layer, no mat edge, no column, from 6 in off the walls and the screen; the cup is 4 1/4 in across.", "Rules of Golf, definition of a hole", FromMemory},
	{"cup", "A hole is at least 4 in deep; what the floor gives less than that is a shallow cup. Never drill into a slab.", "Rules of Golf, definition of a hole", FromMemory},
	{"sound", "Sabine: 0.161 × volume / absorption, before with a bare concrete floor, after with the floor as carpet and absorbers as heavy velour. Rough in a small room.", "standard handbook table of absorption", AsRead},
	{"gap", "The gap under the wall less the floor that is laid; a ball of 1.68 in rolls under what is higher.", "Equipment Rules, Part 4, 3, the ball", FromMemory},
	{"slab", "Fall × the length of the floor that way; the plan's ceiling height is where the slab is highest.", "arithmetic", Computed},
	{"risk", "RG2 is the highest risk group for consumer goods; RG3 is for trained people.", "IEC 62471-5:2015", AsRead},
	{"sensor", "A tee is read if it lies within the strip that the plan gives. Keep-outs and strip are the maker's; they are not checked here.", "the owner's figures", Assumed},
	{"quantity", "Counted from the plan as each line says; prices are the owner's.", "arithmetic", Computed},
}
