// Asks the Python of a browser, in node, and begins it as the page does:
// pocket.mjs RUNTIME FOLDER, where FOLDER has library.zip, packages.zip, shop.zip, worker.js and
// requests.json. What has begun and had to be compiled is in source.json, the answers in answers.json
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

const [runtime, folder] = process.argv.slice(2);
const read = (name) => fs.readFileSync(path.join(folder, name));
const { loadPyodide } = await import(pathToFileURL(path.join(runtime, "pyodide.mjs")));
const quiet = { stdout() {}, stderr() {} };
const python = await loadPyodide({ indexURL: `${runtime}/`, stdLibURL: path.join(folder, "library.zip"), ...quiet });
const into = python.runPython("import site; site.getsitepackages()[0]");
const unpack = (name, to) =>
  python.unpackArchive(new Uint8Array(read(name)), "zip", { extractDir: to });
unpack("packages.zip", into);
unpack("shop.zip", "/");
const { settings, asked } = JSON.parse(read("requests.json"));
python.globals.set("settings", settings);
python.globals.set("ends", "");
const [, begin] = read("worker.js").toString().match(/const BEGIN = `([^`]*)`/);
const does = python.runPython(begin);
const compiled = `import json, sys
json.dumps([name for name, module in sys.modules.items()
    if str(getattr(getattr(module, "__spec__", None), "origin", "")).endswith(".py")])`;
fs.writeFileSync(path.join(folder, "source.json"), python.runPython(compiled));
const answered = asked.map((one) => JSON.parse(does(JSON.stringify(one))));
fs.writeFileSync(path.join(folder, "answers.json"), JSON.stringify(answered));
