'use strict';
// Runs beside the page: Python and the model. Nothing is fetched: whatever Pyodide asks for is
// answered from the parts that the page has sent.
const FOLDER = 'https://boomsim.invalid/';
const LOCK = {info: {python: '3.12.7', version: '0.27.7', arch: 'wasm32', platform: 'emscripten_3_1_58',
  abi_version: '2024_0'}, packages: {}};
let model;

function opened(text) {
  const letters = atob(text), bytes = new Uint8Array(letters.length);
  for (let k = 0; k < letters.length; k++) bytes[k] = letters.charCodeAt(k);
  return new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
}

// A line of JSON with names and sizes, then all contents one after the other.
function unpack(disk, bytes, folder) {
  let place = bytes.indexOf(10) + 1;
  for (const [name, size] of JSON.parse(new TextDecoder().decode(bytes.subarray(0, place)))) {
    const path = `${folder}/${name}`;
    disk.mkdirTree(path.slice(0, path.lastIndexOf('/')));
    disk.writeFile(path, bytes.subarray(place, place += size));
  }
}

async function start({parts, begin}) {
  const site = new Response(opened(parts.site)).arrayBuffer();
  const answers = {
    'pyodide.asm.wasm': [opened(parts.wasm), 'application/wasm'],
    'python_stdlib.zip': [opened(parts.stdlib), 'application/zip'],
    'pyodide-lock.json': [JSON.stringify(LOCK), 'application/json'],
  };
  self.fetch = async address => {
    const found = answers[String(address).replace(FOLDER, '')];
    if (!found) throw new Error(`The page does not hold ${address}.`);
    return new Response(found[0], {headers: {'Content-Type': found[1]}});
  };
  const python = await loadPyodide({indexURL: FOLDER, stdout: () => {}, stderr: words => console.warn(words)});
  postMessage({step: 'python'});
  unpack(python.FS, new Uint8Array(await site), '/lib/python3.12/site-packages');
  python.runPython('import numpy');
  postMessage({step: 'numpy'});
  python.globals.set('begin', begin);
  model = python.runPython(`
import gc, json
from boomsim.lab.live.live_model import Live
live = Live(**json.loads(begin))
# What has been loaded stays; looking through it again and again would hold up every few steps.
gc.collect()
gc.freeze()
gc.set_threshold(20_000, 20, 50)
live`);
  postMessage({step: 'ready', told: changesOf(JSON.parse(model.tell()))});
}

self.onmessage = async ({data}) => {
  try {
    if (data.parts) await start(data);
    else {
      const answer = JSON.parse(model.ask(data.asked));
      postMessage({number: data.number, told: data.reading ? answer : changesOf(answer)});
      // The picture is on its way; what takes longer follows it.
      if (!data.reading) postMessage({number: data.number, rest: changesOf(JSON.parse(model.rest()))});
    }
  } catch (fault) {
    postMessage({number: data.number, fault: String(fault && fault.message || fault)});
  }
};
