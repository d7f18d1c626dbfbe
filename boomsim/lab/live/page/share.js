// A link to the scene, in letters and as a code for a camera.
function linkOf(told) {
  if (first.web) return `${first.web}#${told.address}`;
  return `${location.href.split('#')[0]}#${told.address}`;
}

at('link').addEventListener('click', () => {
  const link = linkOf(shown), lies = link.startsWith('file:');
  at('address').value = link;
  at('code').replaceChildren();
  at('code').hidden = true;
  at('sharenote').textContent = lies
    ? 'This page was opened from a disk, so its link opens on this machine only. Put the file on the web, or name its ' +
      'place when it is written (--address), and the link and its code lead there.'
    : 'Whoever opens it sees this scene.';
  at('share').showModal();
  at('address').select();
  if (!lies) ask({do: 'code', text: link, reading: true});
});

readings.code = told => {
  if (!told.size) return;
  at('code').setAttribute('viewBox', `0 0 ${told.size} ${told.size}`);
  at('code').replaceChildren(drawn('rect', {width: told.size, height: told.size, fill: '#fff'}), drawn('path', {d: told.path, fill: '#000'}));
  at('code').hidden = false;
};

at('copy').addEventListener('click', async () => {
  at('address').select();
  try { await navigator.clipboard.writeText(at('address').value); }
  catch { document.execCommand('copy'); }  // a page from a disk has no clipboard of its own everywhere
  at('sharenote').textContent = 'The link is copied.';
});
at('shut').addEventListener('click', () => at('share').close());
