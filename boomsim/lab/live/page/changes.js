// What is new in an answer: of a picture the marks that have changed, of the rest what is another.
const told = {};  // as it was told last

function changesOf(answer) {
  const changed = {};
  for (const [name, value] of Object.entries(answer)) {
    const last = told[name], written = typeof value === 'string' ? value : JSON.stringify(value);
    if (last?.written === written) continue;
    told[name] = {written};
    changed[name] = value;
    if (name === 'controls') changed[name] = changedControls(last, value);
    if (name === 'stage' || name === 'below') changed[name] = changedMarks(name, last, value);
  }
  return changed;
}

// All of them where others are offered; else those that stand elsewhere or go elsewhere.
function changedControls(last, controls) {
  const shape = JSON.stringify(controls.map(one => [one.name, one.kind, one.options, one.words]));
  const rows = new Map(controls.map(one => [one.name, JSON.stringify(one)]));
  Object.assign(told.controls, {shape, rows});
  return last?.shape === shape ? controls.filter(one => last.rows.get(one.name) !== rows.get(one.name)) : {all: controls};
}

// A picture's views, each as the list of its marks in their order.
function viewsOf(svg) {
  const views = [];
  let depth = 0, view;
  for (const mark of svg.matchAll(/<(\/?)([\w:]+)([^>]*?)(\/?)>([^<]*)/g)) {
    const [whole, shuts, tag, attributes, alone, text] = mark;
    if (shuts) depth--;
    else {
      if (depth === 1) views.push(view = {start: mark.index, marks: []});
      if (depth) view.marks.push({tag, attributes, text});
      if (!alone) depth++;
    }
    if (depth === 1 && view) view.end = mark.index + whole.length;
  }
  return views;
}

const sameMarks = (one, other) => one.marks.length === other.marks.length
  && one.marks.every((mark, place) => mark.tag === other.marks[place].tag);

// The whole picture where it is made of other views; else views drawn anew, and marks changed in place.
function changedMarks(name, last, svg) {
  const views = told[name].views = viewsOf(svg);
  if (last?.views?.length !== views.length) return svg;
  const anew = [], marks = [];
  views.forEach((view, place) => {
    const before = last.views[place];
    if (!sameMarks(before, view)) return anew.push([place, svg.slice(view.start, view.end)]);
    view.marks.forEach((mark, number) => {
      const was = before.marks[number];
      if (mark.attributes === was.attributes && mark.text === was.text) return;
      marks.push([place, number, changedAttributes(was.attributes, mark.attributes), mark.text === was.text ? null : plain(mark.text)]);
    });
  });
  return {anew, marks};
}

const SIGNS = {'&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#x27;': "'"};
const plain = text => text.includes('&') ? text.replace(/&(amp|lt|gt|quot|#x27);/g, sign => SIGNS[sign]) : text;
const attributesOf = text => new Map(Array.from(text.matchAll(/([\w:-]+)="([^"]*)"/g), ([, name, value]) => [name, value]));

function changedAttributes(was, now) {
  if (was === now) return [];
  const before = attributesOf(was), after = attributesOf(now), changed = [];
  for (const [name, value] of after) if (before.get(name) !== value) changed.push([name, plain(value)]);
  for (const name of before.keys()) if (!after.has(name)) changed.push([name, null]);
  return changed;
}
