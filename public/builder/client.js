// The builder's program, fetched by the first who asks: the sheets Build and Projector,
// the shadow on the stage, the paper.
import { createSolver } from "../solver/solver.js";

const SILENT_MS = 180_000; // it answers in one go, after swinging everybody's clubs itself

let program = null;
const mourners = [];

/** The program; onFatal(message), if given, is called when it dies. */
export function builderProgram(/** @type {(message: string) => void} */ onFatal = null) {
  if (onFatal) mourners.push(onFatal);
  program ??= createSolver({ program: "builder.wasm", silent: SILENT_MS, onFatal: (message) => mourners.forEach((tell) => tell(message)) });
  return program;
}
