// The field of one input: its words, what may be typed, units and choices to tap.
"use strict";
const UNKNOWN = "unknown";

// Words of a field with choices, and apart what each choice means.
function inTwo({ says, choices }) {
  const [head] = says.split(/[.;:] (?![^(]*\))/, 1);
  const whole = !choices.length || says.length < 60 || choices.includes(head);
  return whole ? [says, ""] : [head, says.slice(head.length + 2)];
}

// `titled`: the heading of the page has its words.
function makeField(about, { sought = true, titled = false } = {}) {
  const id = `field-${about.name}`;
  const [says, meaning] = inTwo(about);
  const problem = el("p", { class: "problem", id: `${id}-problem`, role: "alert" });
  const taps = el("div", { class: "taps", role: "group", "aria-label": about.says });
  const entry = about.choices.length ? choice(about, id) : typing(about, id);
  let unit = about.unit;
  let word = "";

  const shown = [];
  const tap = (text, does, pressed) => {
    const made = button(text, does, { "aria-pressed": String(pressed) });
    shown.push(made);
    taps.append(made);
    return made;
  };
  for (const name of about.units) {
    const made = tap(name, () => pressUnit(made, name), name === unit);
    made.dataset.unit = name;
  }
  for (const name of [UNKNOWN, ...(sought && about.sought ? ["sought"] : [])]) {
    const made = tap(name, () => pressWord(made, name), false);
    made.dataset.word = name;
  }
  for (const name of about.unit ? known.instruments : []) {
    const made = tap(`by ${name}`, () => pressMeter(made, name), false);
    made.dataset.meter = name;
  }
  let meter = "";

  function press(kind, made) {
    for (const one of shown.filter((b) => kind in b.dataset)) {
      one.setAttribute("aria-pressed", String(one === made));
    }
  }
  function pressUnit(made, name) {
    unit = name;
    press("unit", made);
    setWord("");
  }
  function pressWord(made, name) {
    setWord(word === name ? "" : name);
  }
  function pressMeter(made, name) {
    meter = meter === name ? "" : name;
    press("meter", meter ? made : null);
  }
  function setWord(name) {
    word = name;
    press("word", shown.find((b) => b.dataset.word === name) ?? null);
    entry.classList.toggle("aside", name !== "");
    if (name) entry.value = "";
  }
  entry.addEventListener("input", () => setWord(""));
  if (entry.inputMode === "decimal") taps.append(...allKeys(entry));

  function whole(text) {
    const typed = text.trim();
    const bare = /^[<>]?\s*[-+\d.,/\s]+(±.*)?$/.test(typed) && about.unit;
    const with_ = bare ? withUnit(typed, unit) : typed;
    return meter && !/±|\bby\b/.test(with_) ? `${with_} by ${meter}` : with_;
  }

  const node = el(
    "div",
    { class: "field" },
    el("label", { for: id, class: titled ? "unseen" : undefined }, says, about.needed ? el("strong", {}, " needed") : null),
    el("p", { class: "may-be", id: `${id}-says` }, [meaning, maySay(about)].filter(Boolean).join("; ")),
    entry,
    shown.length ? taps : null,
    problem,
  );
  return {
    name: about.name,
    node,
    entry,
    // What was given, as it would be typed; nothing where it was left out.
    given() {
      if (word) return about.many ? [word] : word;
      const text = entry.value.trim();
      if (!text) return undefined;
      if (!about.many) return whole(text);
      return text.split(";").map((t) => t.trim()).filter(Boolean).map(whole);
    },
    put(text) {
      entry.value = text;
    },
    say(text) {
      problem.textContent = text;
      entry.setAttribute("aria-invalid", text ? "true" : "false");
    },
  };
}

// A keypad for numbers has no ± and on some phones no minus: these taps bring all letters.
function allKeys(entry) {
  const open = (text) => {
    entry.inputMode = "text";
    entry.setRangeText(text, entry.selectionStart, entry.selectionEnd, "end");
    entry.blur(); // some keep the keypad of a field that has the focus
    entry.focus();
    if (text) entry.dispatchEvent(new Event("input"));
  };
  return [button("±", () => open("±"), { "aria-label": "plus or minus" }),
    button("abc", () => open(""), { "aria-label": "all letters" })];
}

// "11 ±0.2" in A is "11 A ±0.2": the unit stands behind the number, the error behind both.
function withUnit(typed, unit) {
  const [number, ...error] = typed.split("±");
  return `${number.trim()} ${unit}${error.length ? ` ±${error.join("±").trim()}` : ""}`;
}

function maySay(about) {
  const parts = [about.choices.length ? "" : about.may_be];
  if (about.such_as && !about.choices.length) parts.push(`such as ${about.such_as}`);
  if (about.many) parts.push("several with ; between");
  if (!about.needed && about.left_out) parts.push(about.left_out);
  return parts.filter(Boolean).join("; ");
}

function typing(about, id) {
  return el("input", {
    id,
    type: "text",
    inputmode: about.unit && !about.many ? "decimal" : "text",
    autocomplete: "off",
    autocapitalize: "off",
    spellcheck: "false",
    "aria-describedby": `${id}-says ${id}-problem`,
  });
}

function choice(about, id) {
  const options = about.choices.map((word) => el("option", { value: word }, word));
  const describes = { id, "aria-describedby": `${id}-says ${id}-problem` };
  return el("select", describes, el("option", { value: "" }, "not given"), options);
}
