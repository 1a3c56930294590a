// Keeps one whole build of the page for use without a network. `cargo xtask build` fills in the
// version and the list of files, each with the hash that its bytes must arrive with.
'use strict';
const FILES = new Map(/* files */);
// By address too: one host may have the page at several paths, each with a build of its own.
const MINE = 'linkwright ' + self.registration.scope + ' ';
const CACHE = MINE + '/* version */';
const address = name => new URL(name, self.registration.scope).href;
const NAMES = new Map([...FILES.keys()].map(name => [address(name), name]).concat([[address('index.html'), './']]));
const NAMED_BY_CONTENT = /-[0-9a-f]{16}\.\w+$/;

async function arrived(name, integrity) {
  const url = address(name);
  const same = NAMED_BY_CONTENT.test(name);
  // A file named by its content is the same in every build: what is here is not sent for again.
  const here = same && await caches.match(url);
  if (here) return here;
  const ask = async cache => {
    const answer = await fetch(url, { cache, integrity });
    // A page that came by a redirect cannot be shown later.
    if (!answer.ok || answer.redirected) throw new Error(name + ': ' + answer.status);
    return answer;
  };
  return ask(same ? 'default' : 'no-cache').catch(() => ask('reload'));
}

addEventListener('install', event => event.waitUntil((async () => {
  const cache = await caches.open(CACHE);
  // All or nothing: one file that is missing or altered, and the build before stays.
  await Promise.all([...FILES].map(async ([name, integrity]) => cache.put(address(name), await arrived(name, integrity))));
})()));

// Only after the reader's yes, or when no page of the build before is open.
addEventListener('message', event => { if (event.data === 'take over') self.skipWaiting(); });

addEventListener('activate', event => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith(MINE) && name !== CACHE) await caches.delete(name);
})()));

addEventListener('fetch', event => {
  const name = NAMES.get(event.request.url.split(/[?#]/)[0]);
  // What is not part of the build is the host's to answer.
  if (name === undefined || event.request.method !== 'GET') return;
  const mine = caches.open(CACHE).then(cache => cache.match(address(name)));
  event.respondWith(mine.then(answer => answer || fetch(event.request)));
});
