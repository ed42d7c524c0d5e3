package swing

// PathResidual is how far the model's paths lie from recorded ones, m: the mean
// distance between recorded paths of driver heads and the nearest member of the
// family that the model makes of the same golfer and club, from the takeaway to
// 0.30 s after impact. The tests of package published find it again. A clearance
// smaller than this says nothing tighter than that the place is close.
const PathResidual = 0.05

// PathResidualHow says for a reader of the report how PathResidual is found.
const PathResidualHow = "the mean distance between recorded paths of driver heads and the nearest swing of the modelled family, from takeaway to 0.30 s after impact"
