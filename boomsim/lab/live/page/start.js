// Buttons and the start.
async function start() {
  const begin = {...first.begin, address: location.hash.slice(1), layout: layout()};
  const parts = {};
  for (const name of ['code', 'wasm', 'stdlib', 'site']) {
    parts[name] = at(`part-${name}`).textContent;
    at(`part-${name}`).remove();
  }
  const letters = atob(parts.code), bytes = Uint8Array.from(letters, letter => letter.charCodeAt(0));
  const code = await new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'))).text();
  delete parts.code;
  const blob = new Blob([code, '\n', at('worker').textContent], {type: 'text/javascript'});
  worker = new Worker(URL.createObjectURL(blob));
  worker.onmessage = heard;
  worker.onerror = fault => failed(fault.message || 'its worker did not start');
  worker.postMessage({parts, begin: JSON.stringify(begin)});
}

const first = JSON.parse(at('first').textContent);
at('state').dataset.ready = first.ready;
if (!location.hash) {
  const told = first[layout()];
  show({...told, controls: {all: told.controls}});
  readings.why(first.why);
}
narrow.addEventListener('change', () => ask({do: 'look', layout: layout()}));
for (const name of ['undo', 'redo', 'reset']) at(name).addEventListener('click', () => ask({do: name}));
at('file').addEventListener('change', async () => {
  const file = at('file').files[0];
  if (file) ask({do: 'open', name: file.name, text: await file.text()});
  at('file').value = '';
});
// The address may have been written meanwhile: the event knows where the reader wants to go.
addEventListener('hashchange', event => {
  clearTimeout(writing);
  ask({do: 'go', address: new URL(event.newURL).hash.slice(1)});
});
start().catch(fault => failed(fault.message));
