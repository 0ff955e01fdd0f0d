// Keeps the whole site on the phone. Pages come from the network when there is one, so that a correction arrives
// on the first visit; hashed files never change and come from the phone. The build fills in the two constants.
const version = 'VERSION';
const addresses = [/* ADDRESSES */];
const store = `site-${version}`;
const patience = 3000; // ms before a slow network is given up for the saved copy

self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(store).then((cache) => cache.addAll(addresses.map((address) => new Request(address, { cache: 'no-cache' })))).then(() => self.skipWaiting()));
});

// The store before this one stays for pages that are still open with its scripts.
self.addEventListener('activate', (event) => {
  event.waitUntil(caches.keys().then((names) => Promise.all(names.slice(0, -2).map((name) => caches.delete(name)))).then(() => self.clients.claim()));
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  event.respondWith(url.pathname.startsWith('/_astro/') ? fromPhone(request) : fromNetwork(request));
});

async function fromPhone(request) {
  return (await caches.match(request)) ?? fetch(request);
}

// A link's numbers are in the query and the page is the same without them.
async function fromNetwork(request) {
  const cache = await caches.open(store);
  const saved = async (address = request) => said(request, await cache.match(address, { ignoreSearch: true }));
  const fresh = fetch(request).then(async (response) => {
    if (response.ok) void cache.put(new URL(request.url).pathname, response.clone());
    return (response.status >= 500 && (await saved())) || response;
  });
  const late = new Promise((resolve) => setTimeout(resolve, patience)).then(() => saved());
  try {
    return (await Promise.race([fresh, late])) ?? (await fresh);
  } catch {
    return (await saved()) ?? (request.mode === 'navigate' ? await saved('/404.html') : undefined) ?? Response.error();
  }
}

// A page out of the store says so. It cannot find out by itself: a phone is often on a network that leads nowhere.
async function said(request, response) {
  if (!response || request.mode !== 'navigate') return response;
  const headers = new Headers(response.headers);
  for (const name of ['content-length', 'content-encoding']) headers.delete(name);
  return new Response((await response.text()).replace(/(<p class="offline"[^>]*?) hidden/, '$1'), { status: response.status, headers });
}
