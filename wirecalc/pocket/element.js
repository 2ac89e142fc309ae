// Making elements: text goes in as text, never as HTML.
"use strict";
function el(tag, about, ...inside) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(about ?? {})) {
    if (name.startsWith("on")) made.addEventListener(name.slice(2), value);
    else if (value === true) made.setAttribute(name, "");
    else if (value !== false && value !== undefined) made.setAttribute(name, value);
  }
  made.append(...inside.flat(Infinity).filter((part) => part !== null && part !== undefined));
  return made;
}

const button = (text, does, about) =>
  el("button", { type: "button", onclick: does, ...about }, text);

const known = JSON.parse(document.getElementById("known").textContent);
const main = document.getElementById("main");

// Shows one screen; the heading gets the focus, so that a screen reader begins there.
function show(title, ...inside) {
  const heading = el("h1", { tabindex: "-1" }, title);
  main.replaceChildren(heading, ...inside.flat(Infinity).filter(Boolean));
  document.getElementById("home").hidden = title === START;
  document.title = `${title} - wirecalc`;
  window.scrollTo(0, 0);
  heading.focus({ preventScroll: true });
}

// What is wrong, and what would do.
const inWords = ({ wrong, would_do: how }) => [wrong, how].filter(Boolean).join("; ");
const inWordsOf = (problem) => [problem.name, inWords(problem)].filter(Boolean).join(": ");

const START = "What is to be checked?";

// What a person keeps in this browser; some browsers share it or drop it.
const kept = {
  get(name) {
    try {
      return JSON.parse(localStorage.getItem(`wirecalc ${name}`));
    } catch {
      return null;
    }
  },
  put(name, value) {
    try {
      localStorage.setItem(`wirecalc ${name}`, JSON.stringify(value));
      return true;
    } catch {
      return false;
    }
  },
  erase(name) {
    localStorage.removeItem(`wirecalc ${name}`);
  },
};

// Hands a text over as a file.
function handOver(name, text, type) {
  const link = el("a", { href: URL.createObjectURL(new Blob([text], { type })), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
