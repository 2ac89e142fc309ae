// A class at the tester: one pull after the other, each beside its limit at once.
"use strict";
const PULLS = "pulls";

function pullClass() {
  const calc = known.calculations.find((c) => c.name === "pull");
  const shared = calc.fields.filter((f) => f.needed && f.name !== "force").map((f) => makeField(f, { sought: false }));
  const force = makeField(calc.fields.find((f) => f.name === "force"), { sought: false });
  const above = el("p", { class: "problem", role: "alert", tabindex: "-1" });
  const picture = el("div", { class: "dots" });
  const list = el("ol", { class: "pulls" });
  const pulled = kept.get(PULLS) ?? [];
  const form = el("form", {}, shared.map((f) => f.node), force.node, above, el("button", { class: "big" }, "put the pull down"));
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const fields = [...shared, force];
    const given = Object.fromEntries(fields.map((f) => [f.name, f.given()]).filter(([, v]) => v !== undefined));
    const done = await python.do("answer", { name: "pull", given });
    if (done.refused || done.defect) {
      sayRefused(done.refused ?? [{ name: "", wrong: done.defect }], fields, above);
      return;
    }
    sayRefused([], fields, above);
    const line = done.finding.criteria.find((c) => c.name === done.finding.decided_by);
    pulled.push({ typed: given.force, force: line.actual, limit: line.limit, unit: line.unit, verdict: line.verdict, reason: line.reason });
    kept.put(PULLS, pulled);
    force.entry.value = "";
    force.entry.focus();
    draw();
  });
  const draw = () => {
    picture.replaceChildren(...(pulled.length ? [dots(pulled)] : []));
    list.replaceChildren(...pulled.map((p) => el("li", {}, `${p.typed}: ${p.verdict}; ${p.reason}`)));
  };
  const csv = () => ["force,verdict", ...pulled.map((p) => `"${p.typed}",${p.verdict}`)].join("\n");
  show("Pulls, one after the other", el("p", {}, "Eyes and hands away from the tester: a part that comes off flies."),
    form, picture, list,
    button("hand them over (pulls.csv)", () => handOver("pulls.csv", csv(), "text/csv")),
    button("begin again", () => { pulled.length = 0; kept.erase(PULLS); draw(); }));
  draw();
}

// A dot a pull in the order in which they came, the limit as a line; the list below says the same.
function dots(pulled) {
  const drawn = pulled.filter((p) => typeof p.force === "number" && typeof p.limit === "number");
  const most = Math.max(1, ...drawn.map((p) => Math.max(p.force, p.limit))) * 1.15;
  const y = (value) => 190 - (180 * value) / most;
  const step = 300 / Math.max(drawn.length, 10);
  const svg = (tag, about, text) => {
    const made = document.createElementNS("http://www.w3.org/2000/svg", tag);
    for (const [name, value] of Object.entries(about)) made.setAttribute(name, value);
    if (text) made.textContent = text;
    return made;
  };
  const label = `${drawn.length} pulls, ${drawn.filter((p) => p.verdict === "fail").length} under the limit, ${drawn.filter((p) => p.verdict === "cannot tell").length} too close to tell`;
  const box = svg("svg", { viewBox: "0 0 360 200", role: "img", "aria-label": label });
  box.append(svg("line", { x1: 40, x2: 350, y1: 190, y2: 190, class: "axis" }));
  drawn.forEach((p, at) => {
    const x = 48 + at * step;
    box.append(svg("line", { x1: x - step / 2, x2: x + step / 2, y1: y(p.limit), y2: y(p.limit), class: "limit" }));
    const good = p.verdict !== "fail";
    const kind = p.verdict === "cannot tell" ? "doubt" : "";
    box.append(svg(good ? "circle" : "path", good ? { cx: x, cy: y(p.force), r: 4, class: kind } : { d: `M${x - 4} ${y(p.force) - 4}l8 8m0 -8l-8 8`, class: "cross" }));
  });
  const last = drawn.at(-1);
  if (last) box.append(svg("text", { x: 0, y: y(last.limit) + 4 }, `${last.limit} ${last.unit}`.slice(0, 9)));
  return box;
}
