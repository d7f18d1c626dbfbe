// Keys that work anywhere on the page: undo and redo.

addEventListener('keydown', event => {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || event.target.type === 'text' || at('share').open) return;
  const what = {z: event.shiftKey ? 'redo' : 'undo', y: 'redo'}[event.key.toLowerCase()];
  if (!what) return;
  event.preventDefault();
  ask({do: what});
});
