// What came out: first what stops the work, then the page of the command line.
"use strict";
const PASSES = ["pass", "marginal"];

// Nobody reads a pass before what stops the work was read.
function showResult(title, done, ...after) {
  const verdict = (done.finding ?? done.job)?.verdict;
  const stops = done.stops ?? [];
  if (!stops.length || !PASSES.includes(verdict)) {
    showPage(title, done, after);
    return;
  }
  show(
    "Read this first",
    el("ul", { class: "stops" }, stops.map((line) => el("li", {}, el("strong", {}, "STOP "), line))),
    button("I have read it: show the result", () => showPage(title, done, after), { class: "big" }),
  );
}

function showPage(title, done, after) {
  show(title, framed(done.page, title), standsFor(), ...after);
}

// The page without script, as high as it is.
function framed(page, title) {
  const frame = el("iframe", { sandbox: "allow-same-origin", title: `Result: ${title}` });
  frame.srcdoc = page;
  frame.addEventListener("load", () => {
    const fit = () => {
      frame.style.height = `${frame.contentDocument.documentElement.scrollHeight + 4}px`;
    };
    fit();
    addEventListener("resize", fit);
  });
  return frame;
}

function standsFor() {
  const rules = known.rules.length ? `, rules ${known.rules.join(", ")}` : ", no house rules";
  const plugins = known.plugins.length ? `, plugins ${known.plugins.join(", ")}` : "";
  const ends = known.ends ? ` Its last day is ${known.ends}.` : "";
  const said = `By wirecalc ${known.version} and its tables, put into this file on ${known.built}`;
  return el("p", { class: "built" }, `${said}${rules}${plugins}.${ends}`);
}

// What was refused stands under its field; what is of none stands above them.
function sayRefused(refused, fields, above) {
  const left = [];
  for (const field of fields) field.say("");
  for (const problem of refused) {
    const field = fields.find((f) => f.name === problem.name);
    if (field) field.say(inWords(problem));
    else left.push(inWordsOf(problem));
  }
  above.textContent = left.join(" ");
  const first = fields.find((f) => f.entry.getAttribute("aria-invalid") === "true");
  const folded = first?.node.closest("details");
  if (folded) folded.open = true;
  (first?.entry ?? above).focus();
}
