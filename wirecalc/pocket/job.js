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

function ask(done) {
  if (done.defect) show("A defect", el("p", { class: "problem" }, done.defect));
  else if (!done.asks) endJob();
  else if (done.asks.of === "job") askOfJob(done);
  else askOfCheck(done);
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
  const notes = asks.notes.length === asks.choices.length ? asks.notes : asks.choices;
  const parts = [stopLines(asks.stops)];
  if (asks.several) {
    const boxes = asks.choices.map((word, at) => {
      const box = el("input", { type: "checkbox", id: `several-${at}`, value: word });
      return el("div", { class: "box" }, box, el("label", { for: box.id }, notes[at]));
    });
    const ticked = () => [...main.querySelectorAll("input:checked")].map((box) => box.value);
    parts.push(boxes, button("go on", () => answer(ticked().join("; ")), { class: "big" }));
  } else {
    parts.push(asks.choices.map((word, at) => button(notes[at], () => answer(word), { class: "big" })));
  }
  if (asks.free) {
    const entry = el("input", { type: "text", id: "typed", "aria-label": asks.says });
    const form = el("form", {}, entry, el("button", { class: "big" }, "go on"));
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      answer(entry.value);
    });
    parts.push(form);
  }
  const shown = asks.notes.length === asks.choices.length ? [] : asks.notes;
  parts.push(shown.map((note) => el("p", { class: "may-be" }, note)));
  if (asks.empty) parts.push(button(`leave empty: ${asks.empty}`, () => answer("")));
  show(asks.says, asks.step ? el("p", { class: "step" }, asks.step) : null, said(problems), ...parts, aside());
}

function askOfCheck({ asks, problems }) {
  const answer = async (typed) => ask(await jobStep("answer", { typed }));
  const head = [
    el("p", { class: "step" }, [asks.step, `${asks.check}, ${asks.stage}`].filter(Boolean).join(": ")),
    el("p", {}, asks.question),
    asks.plate.length ? el("p", { class: "may-be" }, `From the plate: ${asks.plate.join(", ")}`) : null,
    stopLines(asks.stops),
    said(problems),
  ];
  const away = [
    button("not now", async () => ask(await jobStep("later"))),
    button("not this check", async () => ask(await jobStep("drop"))),
  ];
  if (!asks.field) {
    show(asks.check, ...head, el("p", { class: "standing" }, asks.standing),
      button("go on", () => answer(""), { class: "big" }), aside(...away));
    return;
  }
  const { field } = asks;
  const made = makeField(field, { sought: false });
  const form = el("form", {}, made.node, el("button", { class: "big" }, "go on"));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const given = made.given();
    answer(given === undefined ? "" : [given].flat().join("; "));
  });
  const offer = field.offered
    ? button(`as before: ${field.offered}${field.of ? `, as for ${field.of}` : ""}`, () => answer(""), { class: "big" })
    : null;
  const without = field.absent || (field.assumed && `${field.assumed}, assumed`) || "leave it out";
  const skip = field.needed && !field.absent ? null : button(without, () => answer("skip"));
  show(field.says, ...head, field.why ? el("p", { class: "may-be" }, `why: ${field.why}`) : null,
    offer, form, skip, el("p", { class: "standing" }, asks.standing), aside(...away));
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
