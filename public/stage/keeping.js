// What to keep of the stage: three kinds of picture, each a file.
import { download, h, setText } from "../app/dom.js";

const SIZE = { width: 640, height: 400 }; // px of a key frame and of a loop, in 3D

/**
 * A menu that makes pictures. about() tells what is shown: the reel, the moment, a
 * title; shoot(t, size) resolves to a picture of a moment.
 */
export function createKeeping({ about, shoot }) {
  const said = h("span", { role: "status" });
  const kinds = {
    "This picture": async () => {
      const { t } = about();
      const { png } = await shoot(t);
      return [new Blob([png], { type: "image/png" }), "swing.png"];
    },
    "Key frames": async (make) => {
      const { reel, title } = about();
      return [await make.strip(reel, (t) => shoot(t, SIZE), title), "swing-key-frames.png"];
    },
    "Loop of the tightest": async (make) => {
      const { reel } = about();
      return [await make.loop(reel, (t) => shoot(t, SIZE)), "swing-loop.png"];
    },
  };
  const buttons = Object.entries(kinds).map(([label, does]) => h("button", { type: "button", onclick: () => keep(does) }, label));

  async function keep(does) {
    for (const button of buttons) button.disabled = true;
    setText(said, "Drawing\u2026");
    try {
      const make = await import("../pictures/pictures.js");
      const [blob, name] = await does(make);
      download(blob, name);
      setText(said, `${name} is kept with your downloads.`);
    } catch {
      setText(said, "The picture could not be made. Try it again, or from the drawings.");
    }
    for (const button of buttons) button.disabled = false;
  }

  return h("details", { class: "stage-keep" }, h("summary", {}, "Keep"),
    h("div", { class: "stage-group", role: "group", "aria-label": "Pictures to keep" }, ...buttons, said));
}
