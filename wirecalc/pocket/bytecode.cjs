// Python for a browser, run by node, compiles what it loads up to a first answer. The runtime and
// packages.zip lie beside this script; what is made goes into the folder made.
"use strict";
const fs = require("node:fs");
const path = require("node:path");
const { loadPyodide } = require("./pyodide.js");

const MAKE = `
import json
from wirecalc.in_page.asked import Page
from wirecalc.pocket import bytecode
page = Page()
for asked in (
    {"do": "answer", "name": "drop", "given": {}},
    {"do": "job", "step": "open"},
    {"do": "fits", "words": "breaker keeps tripping"},
):
    page.do(json.dumps(asked))
[bytecode.compiled(bytes(archive)) for archive in archives.to_py()]
`;

(async () => {
  const read = (name) => new Uint8Array(fs.readFileSync(path.join(__dirname, name)));
  const lock = new TextDecoder().decode(read("pyodide-lock.json"));
  const quiet = { stdout() {}, stderr() {} };
  const python = await loadPyodide({ indexURL: `${__dirname}/`, lockFileContents: lock, ...quiet });
  const into = python.runPython("import site; site.getsitepackages()[0]");
  const names = ["python_stdlib.zip", "packages.zip"];
  const archives = names.map(read);
  python.unpackArchive(archives[1], "zip", { extractDir: into });
  python.globals.set("archives", archives);
  const made = python.runPython(MAKE).toJs();
  fs.mkdirSync(path.join(__dirname, "made"));
  names.forEach((name, at) => fs.writeFileSync(path.join(__dirname, "made", name), made[at]));
})().catch((error) => {
  console.error(String(error));
  process.exit(1);
});
