// Asks the Python of a browser, in node: pocket.mjs RUNTIME PACKAGES.zip REQUESTS.json ANSWERS.json
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

const [runtime, packages, requests, answers] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(path.join(runtime, "pyodide.mjs")));
const quiet = { stdout() {}, stderr() {} };
const python = await loadPyodide({ indexURL: `${runtime}/`, ...quiet });
const into = python.runPython("import site; site.getsitepackages()[0]");
const zip = new Uint8Array(fs.readFileSync(packages));
python.unpackArchive(zip, "zip", { extractDir: into });
const does = python.runPython(`
import importlib
importlib.invalidate_caches()
from wirecalc.in_page.asked import Page
Page().do
`);
const asked = JSON.parse(fs.readFileSync(requests, "utf8"));
const answered = asked.map((one) => JSON.parse(does(JSON.stringify(one))));
fs.writeFileSync(answers, JSON.stringify(answered));
