// Keeps the page in this browser: it opens without a network once it was opened with one.
"use strict";
const NAME = "wirecalc";
const FILES = ["./", "PAGE"];

self.addEventListener("install", (event) => {
  const kept = caches.open(NAME).then((cache) => cache.addAll(FILES));
  event.waitUntil(kept.then(() => self.skipWaiting()));
});

// the newest file where there is a network, else the one that was kept
self.addEventListener("fetch", (event) => {
  const newest = fetch(event.request).then(async (answer) => {
    if (answer.ok) (await caches.open(NAME)).put(event.request, answer.clone());
    return answer;
  });
  event.respondWith(newest.catch(() => caches.match(event.request)));
});
