// A job by questions, one screen a question; its sheet is kept in this browser after every answer.
"use strict";
const JOB = "job";

async function jobStep(step, more) {
  const done = await python.do("job", { step, ...more });
  if (done.sheet) kept.put(JOB, { ...kept.get(JOB), sheet: done.sheet });
  return done;
}

async function openJob(sheet) {
  show("A job", el("p", { role: "status" }, "One moment."));
  const done = await jobStep("open", { sheet });
  if (done.refused || done.defect) {
    const why = done.defect ?? done.refused.map(inWordsOf).join(". ");
    show("This sheet cannot be used", el("p", { class: "problem" }, why));
    return;
  }
  ask(done);
}

// `typed` is what was refused, to be mended.
function ask(done, typed = "") {
  if (done.defect) show("A defect", el("p", { class: "problem" }, done.defect));
  else if (!done.asks) endJob();
  else if (done.asks.of === "job") askOfJob(done);
  else askOfCheck(done, typed);
}

const stopLines = (stops) =>
  stops.length ? el("ul", { class: "stops" }, stops.map((line) => el("li", {}, line))) : null;

const said = (problems) =>
  el("p", { class: "problem", role: "alert" }, problems.map(inWords).join(" "));

function aside(...buttons) {
  const back = button("back", async () => ask(await jobStep("back")));
  return el("div", { class: "aside-buttons" }, back, ...buttons);
}

function askOfJob({ asks, problems }) {
  const answer = async (typed) => ask(await jobStep("answer", { typed }));
  const noted = asks.notes.length === asks.choices.length;
  const notes = noted ? asks.notes : asks.choices;
  const parts = [];
  if (asks.several) {
    const boxes = asks.choices.map((word, at) => {
      const box = el("input", { type: "checkbox", id: `several-${at}`, value: word });
      return el("div", { class: "box" }, box, el("label", { for: box.id }, notes[at]));
    });
    const ticked = () => [...main.querySelectorAll("input:checked")].map((box) => box.value);
    parts.push(boxes, button("go on", () => answer(ticked().join("; ")), { class: "big go" }));
  } else {
    parts.push(asks.choices.map((word, at) =>
      button(notes[at], () => answer(word), { class: word === asks.default ? "big meant" : "big" })));
  }
  if (asks.free) {
    const entry = el("input", { type: "text", id: "typed", "aria-label": asks.says });
    const form = el("form", {}, entry, el("button", { class: "big" }, "go on"));
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      answer(entry.value);
    });
    parts.push(asks.choices.length ? el("label", { for: "typed" }, "or in other words") : null, form);
  }
  if (asks.empty && !asks.choices.includes(asks.default || asks.empty)) {
    const without = asks.choices.length ? asks.empty : `leave empty: ${asks.empty}`;
    parts.push(button(without, () => answer(""), { class: "big" }));
  }
  show(asks.says, asks.step ? el("p", { class: "step" }, asks.step) : null, stopLines(asks.stops), said(problems),
    noted ? null : asks.notes.map((note) => el("p", { class: "may-be" }, note)), ...parts, aside());
}

// What the answers come to so far; where they tell nothing yet, it is folded away.
function standing([first, ...rest]) {
  if (!first) return null;
  const lines = (texts) => texts.map((text) => el("p", { class: "may-be" }, text));
  const open = /^So far: CANNOT TELL\s+/;
  if (!open.test(first)) return el("div", {}, el("p", { class: "standing" }, first), lines(rest));
  const why = lines([first.replace(open, ""), ...rest]);
  return el("details", {}, el("summary", {}, "So far: CANNOT TELL"), why);
}

function askOfCheck({ asks, problems }, typed) {
  const answer = async (said) => ask(await jobStep("answer", { typed: said }), said);
  const { field } = asks;
  const title = field ? inTwo(field)[0] : asks.check;
  const head = [
    el("p", { class: "step" }, [asks.step, `${asks.check}, ${asks.stage}`].filter(Boolean).join(": ")),
    el("p", {}, asks.question),
    asks.plate.length ? el("p", { class: "may-be" }, `From the plate: ${asks.plate.join(", ")}`) : null,
    stopLines(asks.stops),
    said(problems.filter((problem) => problem.name !== field?.name)),
  ];
  const end = [
    standing(asks.standing),
    mayStill(asks.more),
    aside(
      button("not now", async () => ask(await jobStep("later"))),
      button("not this check", async () => ask(await jobStep("drop"))),
    ),
  ];
  if (!field) {
    const [stands, ...rest] = end;
    show(title, ...head, stands, button("go on", () => answer(""), { class: "big go" }), ...rest);
    return;
  }
  const offer = field.offered
    ? button(`as before: ${field.offered}${field.of ? `, as for ${field.of}` : ""}`, () => answer(""), { class: "big meant" })
    : null;
  const without = field.absent || (field.assumed && `${field.assumed}, assumed`) || "leave it out";
  const skip = field.needed && !field.absent ? null : button(without, () => answer("skip"), { class: "big" });
  const why = field.why ? el("p", { class: "may-be" }, `why: ${field.why}`) : null;
  show(title, ...head, why, offer, fieldOfCheck(field, answer, problems, typed), skip, ...end);
}

// What need not be answered, and may be.
function mayStill(more) {
  if (!more.length) return null;
  const does = ({ name, says }) =>
    button(says, async () => ask(await jobStep("more", { typed: name })), { class: "big" });
  return el("details", {}, el("summary", {}, `What may still be answered (${more.length})`), more.map(does));
}

// One tap answers where there are words to choose from.
function fieldOfCheck(field, answer, problems, typed) {
  if (field.choices.length && !field.many) {
    const meaning = inTwo(field)[1];
    return [
      meaning ? el("p", { class: "may-be" }, meaning) : null,
      [...field.choices, UNKNOWN].map((word) => button(word, () => answer(word), { class: "big" })),
    ];
  }
  const made = makeField(field, { sought: false, titled: true });
  const wrong = problems.filter((problem) => problem.name === field.name).map(inWords).join(" ");
  if (wrong) made.put(typed);
  made.say(wrong);
  const form = el("form", {}, made.node, el("button", { class: "big" }, "go on"));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const given = made.given();
    answer(given === undefined ? "" : [given].flat().join("; "));
  });
  return form;
}

async function endJob() {
  const done = await jobStep("report");
  if (done.refused) {
    show("Not a job yet", el("p", { class: "problem" }, done.refused.map(inWordsOf).join(". ")), aside());
    return;
  }
  const { sheet } = kept.get(JOB);
  const over = (name, text, type) => () => {
    handOver(name, text, type);
    kept.put(JOB, { ...kept.get(JOB), exported: true });
    erase.hidden = false;
  };
  const erase = button("erase the job from this browser", () => {
    kept.erase(JOB);
    python.do("job", { step: "erase" });
    start();
  });
  erase.hidden = !kept.get(JOB).exported;
  showResult("The job", done,
    el("h2", {}, "Hand it over"),
    button("the sheet (job.toml)", over("job.toml", sheet, "application/toml"), { class: "big" }),
    button("the page (job.html)", over("job.html", done.page, "text/html"), { class: "big" }),
    button("the figures (job.json)", over("job.json", JSON.stringify(done.job, null, 2), "application/json"), { class: "big" }),
    el("p", { class: "may-be" }, "On the computer: wirecalc job job.toml"),
    erase, aside());
}
