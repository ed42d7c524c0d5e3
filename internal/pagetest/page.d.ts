// What the page's parts hand each other.
type Whose = import("../../public/app/state.js").Whose;
type State = ReturnType<typeof import("../../public/app/state.js").createState>;
type Solver = ReturnType<typeof import("../../public/solver/solver.js").createSolver>;
type Mover = ReturnType<typeof import("../../public/app/mover.js").createMover>;
type Sheets = ReturnType<typeof import("../../public/app/sheets.js").createSheets>;
type Drawings = ReturnType<typeof import("../../public/drawings/drawings.js").createDrawings>;
type Clock = ReturnType<typeof import("../../public/stage/clock.js").createClock>;
type Reel = ReturnType<typeof import("../../public/stage/reel.js").readReel>;

/** What parts that are fetched later share; idle says that no verdict is under way. */
interface Shared {
  state: State;
  solver: Solver;
  drawings: Drawings;
  sheets: Sheets;
  mover: Mover;
  idle: () => boolean;
  cards: Wire.Card[];
  /** A map of everybody, by name; set by the part that draws the maps. */
  mapOf: (which: string) => Promise<any>;
}

/** A view of the room on paper: metres to pixels and back. */
type Paper = ReturnType<typeof import("../../public/drawings/drawings.js").mapping>;
