// Has the worker keep the page for use without a network, and tells of a newer build. Where a
// browser refuses, the page works on, only not without a network.
async function keepOffline() {
  if (!navigator.serviceWorker || location.protocol === 'file:') return;
  const home = await navigator.serviceWorker.register('sw.js', { updateViaCache: 'none' });
  const tell = () => { if (home.waiting && home.active) offer(home); };
  const watch = () => { if (home.installing) home.installing.addEventListener('statechange', tell); };
  home.addEventListener('updatefound', watch);
  watch();
  tell();
  // A page on a home screen may stay open for weeks: look again when it comes back into sight.
  let looked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - looked < 3600000) return;
    looked = Date.now();
    home.update().catch(() => {});
  });
}

// Said once. Nothing changes until the reader says yes; by then a still newer one may wait, or this one run already.
function offer(home) {
  const news = document.getElementById('news');
  if (news.firstChild) return;
  const words = document.createElement('p');
  words.textContent = 'A newer version is ready.';
  const yes = document.createElement('button');
  yes.type = 'button';
  yes.id = 'use-newer';
  yes.textContent = 'Use it now';
  yes.addEventListener('click', () => {
    yes.disabled = true;
    const worker = home.waiting;
    if (!worker) return location.reload();
    worker.addEventListener('statechange', () => {
      if (worker.state === 'activated') location.reload();
      // A still newer one took its place just now.
      else if (worker.state === 'redundant') yes.disabled = false;
    });
    worker.postMessage('take over');
  });
  words.append(yes);
  news.append(words);
}
