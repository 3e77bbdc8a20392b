package motion

import "taperwright/profiles/shop"

// group is a modal group: words of one group exclude one another in a block
// (NISTIR 6556 3.4, with the groups that turning adds).
type group uint8

const (
	noGroup group = iota
	motionGroup
	oneShot // dwell, reference return, machine frame, frame preset, one-block cycles
	planeGroup
	distanceGroup
	feedGroup
	speedGroup
	unitGroup
	noseGroup
	frameGroup
	xGroup
	pathGroup
	cancelGroup
	stopGroup
	spindleGroup
	toolGroup
	coolantGroup
	groups
)

// groupOf tells each purpose's group. Purposes that are not here are refused
// by name.
var groupOf = map[shop.Purpose]group{
	shop.Rapid: motionGroup, shop.Feed: motionGroup, shop.ArcCW: motionGroup, shop.ArcCCW: motionGroup,
	shop.Dwell: oneShot, shop.Home: oneShot, shop.MachineFrame: oneShot, shop.SpeedCap: oneShot, shop.FramePreset: oneShot,
	shop.PlaneZX:  planeGroup,
	shop.Absolute: distanceGroup, shop.Incremental: distanceGroup,
	shop.FeedPerMinute: feedGroup, shop.FeedPerRev: feedGroup,
	shop.SurfaceSpeed: speedGroup, shop.SpindleRPM: speedGroup,
	shop.UnitInch: unitGroup, shop.UnitMM: unitGroup,
	shop.NoseOff: noseGroup, shop.NoseLeft: noseGroup, shop.NoseRight: noseGroup,
	shop.WorkFrame: frameGroup,
	shop.DiameterX: xGroup, shop.RadiusX: xGroup,
	shop.PathMode:    pathGroup,
	shop.CycleCancel: cancelGroup,
	shop.ProgramStop: stopGroup, shop.OptionalStop: stopGroup, shop.ProgramEnd: stopGroup, shop.ReturnFromSub: stopGroup,
	shop.SpindleForward: spindleGroup, shop.SpindleReverse: spindleGroup, shop.SpindleStop: spindleGroup,
	shop.ToolChange: toolGroup,
	shop.Coolant:    coolantGroup, shop.CoolantOff: coolantGroup,
}

// trade names purposes as messages say them.
var trade = map[shop.Purpose]string{
	shop.Rapid: "rapid", shop.Feed: "the straight feed move", shop.ArcCW: "the clockwise arc", shop.ArcCCW: "the counterclockwise arc",
	shop.Dwell: "the dwell", shop.Home: "the reference return", shop.MachineFrame: "a move in the machine's frame",
	shop.SpeedCap: "the speed cap (or the frame preset)", shop.FramePreset: "the frame preset", shop.PlaneZX: "the plane ZX",
	shop.Absolute: "absolute coordinates", shop.Incremental: "incremental coordinates", shop.FeedPerMinute: "feed per minute", shop.FeedPerRev: "feed per revolution",
	shop.SurfaceSpeed: "surface speed", shop.SpindleRPM: "rev/min", shop.UnitInch: "inch", shop.UnitMM: "mm",
	shop.NoseOff: "nose compensation off", shop.NoseLeft: "nose compensation left", shop.NoseRight: "nose compensation right",
	shop.WorkFrame: "a work offset", shop.DiameterX: "X as diameter", shop.RadiusX: "X as radius", shop.PathMode: "a path mode", shop.CycleCancel: "the end of cycles",
	shop.ProgramStop: "the stop", shop.OptionalStop: "the optional stop", shop.ProgramEnd: "the program end", shop.ReturnFromSub: "the return from a subprogram",
	shop.SpindleForward: "spindle forward", shop.SpindleReverse: "spindle reverse", shop.SpindleStop: "spindle stop",
	shop.ToolChange: "the tool change", shop.Coolant: "coolant", shop.CoolantOff: "coolant off",
	shop.CycleTurn: "the turning cycle", shop.CycleFace: "the facing cycle", shop.CycleRough: "the roughing cycle along Z", shop.CycleRoughFace: "the roughing cycle along X",
	shop.CycleRepeat: "the contour repeat cycle", shop.CycleFinish: "the finishing cycle", shop.CycleThread: "the thread cycle", shop.ThreadMove: "the thread move",
	shop.CycleGroove: "the grooving cycle", shop.CycleFaceGroove: "the face grooving cycle", shop.CycleThreadMany: "the thread cycle of many passes",
	shop.CallSub: "the subprogram call",
}

func tradeName(p shop.Purpose) string {
	if s := trade[p]; s != "" {
		return s
	}
	return string(p)
}
