// The sheets Build and Projector. They have a program of their own, fetched when one of
// them is first opened, in a worker of its own: nobody else waits for it.
//
// Hooks for tests, read-only, on #build and #projector: data-busy is "yes" until what is
// shown is that of the plan.
import { $, asSentence, setText, styles } from "../app/dom.js";
import { builderProgram } from "./client.js";
import { createFields } from "./fields.js";
import { createFloor } from "./floor.js";
import { createLight } from "./light.js";

/** @param {Shared} shared */
export function createBuilder({ state, solver, sheets }) {
  styles("builder/builder.css").catch(() => {}); // plainer without
  const said = { build: $("#build-said"), projector: $("#projector-said") };
  const failed = (name, message) => {
    setText(said[name], asSentence(message));
    $(`#${name}`).dataset.busy = "no";
  };
  const builder = builderProgram((message) => Object.keys(said).forEach((name) => failed(name, message)));

  const ctx = {
    state,
    /** A length as it is typed: {metres, label} or {error}. */
    read: (text) => solver.ask({ kind: "length", text, units: state.good.units }),
    ask: (channel, request) => builder.latest(channel, { plan: state.good, ...request }),
    /** Changes a field of the plan's members by what was typed; a sentence if that cannot be. */
    set: (path, text) => ctx.change("set", path, text),
    /** The same, or has a thing come ("add") or go ("remove"). */
    async change(kind, path, text = "") {
      const reply = await builder.ask({ kind, plan: state.good, path, text });
      if (reply.error) return reply.error.message;
      await state.edit((plan) => {
        for (const member of ["projector", "build", "sensor"]) {
          if (reply[member]) plan[member] = reply[member];
          else delete plan[member];
        }
      }, path);
      return "";
    },
  };
  const parts = { build: createFloor(ctx, createFields(ctx)), projector: createLight(ctx, createFields(ctx)) };

  for (const [name, part] of Object.entries(parts)) {
    const el = $(`#${name}`);
    let plans = 0; // that were answered: what is worked out for an older one is not the sheet of this
    const load = sheets.inSight([name], async () => {
      const mine = plans;
      const reply = await builder.latest(name, { kind: name, plan: state.good });
      if (!reply || mine !== plans) return;
      if (reply.error) {
        failed(name, reply.error.message); // what was shown before stays, with its fields
        return;
      }
      setText(said[name], "");
      part.el.hidden = false;
      await part.show(reply);
      if (mine === plans) el.dataset.busy = "no";
    });
    state.onAnswered(() => {
      plans++;
      el.dataset.busy = "yes";
      load();
    });
    let width = 0;
    new ResizeObserver(([{ target }]) => {
      if (target.clientWidth === width) return;
      width = target.clientWidth;
      part.redraw();
    }).observe(el);
  }
}
