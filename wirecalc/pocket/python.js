// Talking to Python: one request after the other, each with its answer.
"use strict";
const python = (() => {
  const waiting = new Map();
  let worker = null;
  let count = 0;
  const state = document.getElementById("state");

  const text = (id) => document.getElementById(id).textContent;
  const say = (words) => {
    state.textContent = words;
  };

  function ask(message) {
    return new Promise((done, broke) => {
      count += 1;
      waiting.set(count, { done, broke });
      worker.postMessage({ id: count, ...message });
    });
  }

  function start() {
    say("Python is being unpacked; forms can be filled in meanwhile.");
    const script = new Blob([text("worker")], { type: "text/javascript" });
    worker = new Worker(URL.createObjectURL(script));
    worker.onmessage = ({ data }) => {
      const { done, broke } = waiting.get(data.id);
      waiting.delete(data.id);
      if ("broke" in data) broke(new Error(data.broke));
      else done(data.done);
    };
    const names = ["runtime-script", "runtime-wasm", "runtime-lock", "library", "packages", "shop"];
    const parts = Object.fromEntries(names.map((name) => [name, text(name)]));
    const began = ask({ start: parts, settings: known.settings, ends: known.ends });
    for (const name of names) document.getElementById(name).textContent = "";
    return began.then(
      () => say(""),
      (error) => {
        say(`Nothing can be computed here: ${error.message}`);
        throw error;
      },
    );
  }

  const ready = start();
  ready.catch(() => {});
  return {
    // Returns what Python answers; what it can't use stands in `refused`.
    async do(what, more) {
      await ready;
      return ask({ asked: JSON.stringify({ do: what, ...more }) });
    },
  };
})();
