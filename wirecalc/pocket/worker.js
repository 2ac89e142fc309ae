// Runs Python beside the page: decodes what is embedded, and answers one request after the other.
"use strict";
const served = {};
self.fetch = async (asked) => {
  const name = String(asked.url ?? asked).split("/").pop().split("?")[0];
  if (!(name in served)) throw new TypeError(`nothing is fetched: ${name}`);
  const type = name.endsWith(".wasm") ? "application/wasm" : "application/octet-stream";
  return new Response(served[name], { headers: { "Content-Type": type } });
};

async function decoded(text) {
  const bytes = Uint8Array.fromBase64
    ? Uint8Array.fromBase64(text)
    : Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const stream = new Response(bytes).body.pipeThrough(new DecompressionStream("gzip"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

async function start(parts) {
  const names = Object.keys(parts);
  const all = await Promise.all(names.map((name) => decoded(parts[name])));
  const files = Object.fromEntries(names.map((name, at) => [name, all[at]]));
  // a worker of a local file may read no blob in some browsers; called so, eval is of all
  (0, eval)(new TextDecoder().decode(files["runtime-script"]));
  served["pyodide.asm.wasm"] = files["runtime-wasm"];
  served["python_stdlib.zip"] = files.library;
  const python = await loadPyodide({
    indexURL: "https://file.invalid/",
    lockFileContents: new TextDecoder().decode(files["runtime-lock"]),
    stdout: () => {},
    stderr: () => {},
  });
  const into = python.runPython("import site; site.getsitepackages()[0]");
  python.unpackArchive(files.packages, "zip", { extractDir: into });
  python.unpackArchive(files.shop, "zip", { extractDir: "/" });
  return python;
}

// the folders are the page's own: nobody else writes to them
const BEGIN = `
import importlib, os
importlib.invalidate_caches()
for place, folders, names in os.walk("/shop"):
    os.chmod(place, 0o755)
    for name in names:
        os.chmod(os.path.join(place, name), 0o644)
os.chmod("/", 0o755)
if settings:
    os.environ["WIRECALC_CONFIG"] = "/shop/" + settings
from wirecalc.in_page.asked import Page
Page(ends).do
`;

let does;
self.onmessage = async ({ data }) => {
  try {
    if (data.start) {
      const python = await start(data.start);
      python.globals.set("settings", data.settings);
      python.globals.set("ends", data.ends);
      does = python.runPython(BEGIN);
      self.postMessage({ id: data.id, done: {} });
    } else {
      self.postMessage({ id: data.id, done: JSON.parse(does(data.asked)) });
    }
  } catch (error) {
    self.postMessage({ id: data.id, broke: String(error).slice(-600) });
  }
};
