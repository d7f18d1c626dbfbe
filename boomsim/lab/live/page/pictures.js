// Pictures: put in whole, or changed mark by mark; what stays is left alone.
const pieces = {};

function showPicture(name, told) {
  if (told === undefined) return;
  const place = at(name);
  if (typeof told === 'string') {
    place.innerHTML = told;
    return void (pieces[name] = Array.from(place.firstElementChild?.children || [], marksOf));
  }
  for (const [view, drawing] of told.anew) {
    const old = pieces[name][view][0], holder = drawn('svg', {});
    holder.innerHTML = drawing;
    pieces[name][view] = marksOf(holder.firstElementChild);
    old.replaceWith(holder.firstElementChild);
  }
  for (const [view, number, attributes, text] of told.marks) {
    const mark = pieces[name][view][number];
    for (const [key, value] of attributes) value === null ? mark.removeAttribute(key) : mark.setAttribute(key, value);
    if (text && mark.firstChild) mark.firstChild.data = text;
    else if (text !== null) mark.textContent = text;
  }
}

const marksOf = view => [view, ...view.querySelectorAll('*')];
