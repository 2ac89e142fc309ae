// The first screen: by words, by part of the trade, what was used last; and the form of each.
"use strict";
const USED = "used";

function start() {
  const found = el("ul", { class: "found", "aria-live": "polite" });
  const entry = el("input", { id: "words", type: "search", autocomplete: "off", "aria-label": "in your own words" });
  let asked = 0;
  entry.addEventListener("input", async () => {
    const words = entry.value.trim();
    asked += 1;
    const mine = asked;
    list(found, words ? byWords(words) : []);
    if (words.length < 2) return;
    const { names } = await python.do("fits", { words });
    if (mine === asked) list(found, names.map(named).filter(Boolean), words);
  });
  const used = (kept.get(USED) ?? []).map(named).filter(Boolean);
  const job = kept.get(JOB);
  const file = el("input", { type: "file", id: "sheet", accept: ".toml", class: "file" });
  file.addEventListener("change", async () => {
    if (file.files[0]) openJob(await file.files[0].text());
  });
  const begin = () => {
    if (!job || confirm("The job that is kept here is written over.")) openJob("");
  };
  show(
    START,
    el("label", { for: "words" }, "In your own words: a part, a symptom, a reading"),
    entry,
    found,
    el("h2", {}, "A repair from the first reading to the hand-over"),
    job ? button("go on with the job", () => openJob(job.sheet), { class: "big" }) : null,
    button(job ? "another job" : "begin a job", begin, { class: "big" }),
    el("label", { for: "sheet" }, "or take up a sheet (TOML)"),
    file,
    el("p", { class: "may-be" }, "It is kept in this browser and sent nowhere. Some browsers share such a store or drop it: hand the sheet over when it is done. No names, addresses or notes of customers."),
    used.length ? [el("h2", {}, "Used last"), list(el("ul", { class: "found" }), used)] : null,
    el("h2", {}, "By part of the trade"),
    parts(),
    button("pulls of a class, one after the other", pullClass, { class: "big" }),
  );
}

const named = (name) => known.calculations.find((c) => c.name === name);

// Before Python is there; it knows of slips and of words that mean the same.
function byWords(typed) {
  const said = typed.toLowerCase();
  const words = said.split(/\s+/);
  const text = (c) => [c.name, c.question, ...c.words].join(" ").toLowerCase();
  const exact = (c) => [c.name, ...c.words].some((word) => word.toLowerCase() === said);
  const fit = known.calculations.filter((c) => words.every((word) => text(c).includes(word)));
  return fit.sort((a, b) => exact(b) - exact(a)).slice(0, 6);
}

function list(into, calculations, words) {
  const lines = calculations.map((c) =>
    el("li", {}, button(c.question, () => form(c), { class: "big" })));
  const none = words && !lines.length ? [el("li", {}, "Nothing here speaks of it.")] : [];
  into.replaceChildren(...lines, ...none);
  return into;
}

function parts() {
  const names = [...new Set(known.calculations.map((c) => c.part))];
  return names.map((part) => {
    const of = known.calculations.filter((c) => c.part === part);
    return el("details", {}, el("summary", {}, part), list(el("ul", { class: "found" }), of));
  });
}

function form(calc) {
  kept.put(USED, [calc.name, ...(kept.get(USED) ?? []).filter((n) => n !== calc.name)].slice(0, 5));
  if (calc.needs_computer) {
    show(calc.question, el("p", {}, `This needs the computer: ${calc.needs_computer}. There: wirecalc ${calc.name}`));
    return;
  }
  const there = calc.fields.filter((about) => !about.of_file || known.files.length);
  const fields = there.map((about) => ({ about, ...makeField(offering(about)) }));
  const open = fields.filter((f) => f.about.needed).map((f) => f.node);
  const folded = fields.filter((f) => !f.about.needed).map((f) => f.node);
  const above = el("p", { class: "problem", role: "alert", tabindex: "-1" });
  const go = el("button", { class: "big" }, "check it");
  const made = el(
    "form", {}, open,
    folded.length ? el("details", {}, el("summary", {}, `Where it applies, or may be left out (${folded.length})`), folded) : null,
    above, go,
  );
  made.addEventListener("submit", async (event) => {
    event.preventDefault();
    go.disabled = true;
    above.textContent = "";
    const given = Object.fromEntries(fields.map((f) => [f.name, f.given()]).filter(([, v]) => v !== undefined));
    const again = () => show(calc.question, made);
    try {
      const done = await python.do("answer", { name: calc.name, given });
      if (done.refused) sayRefused(done.refused, fields, above);
      else if (done.defect) above.textContent = done.defect;
      else showResult(calc.question, done, button("change an answer", again, { class: "big" }));
    } catch (error) {
      above.textContent = String(error.message);
    }
    go.disabled = false;
  });
  show(calc.question, made);
}

// A file is one that was put into this one.
const offering = (about) => (about.of_file ? { ...about, choices: known.files } : about);

function about() {
  const rows = known.packages.map(([name, version, licence]) =>
    el("tr", {}, el("th", { scope: "row" }, `${name} ${version}`), el("td", {}, licence)));
  show(
    "About this file",
    el("p", {}, "It computes here, in the browser, and fetches nothing. Each result is that of the command line of the same version."),
    standsFor(),
    el("table", {}, el("caption", {}, "What is in it, and under which licence"), el("tbody", {}, rows)),
    el("p", { class: "may-be" }, "The licence texts of the packages lie in the file, with their metadata; the source of the runtime is published under its name and version. The licences of what is linked into the runtime are from memory."),
  );
}

document.getElementById("home").addEventListener("click", start);
document.getElementById("about").addEventListener("click", about);
document.getElementById("built").textContent = `Put into this file on ${known.built}.`;
start();
