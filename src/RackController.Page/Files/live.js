// Follows what happens at the racks. Without it the page shows the moment it was opened, and still stops and asks.
"use strict";

const staleAfterMs = 5000;
const freshness = document.getElementById("freshness");
let heardAt = Date.now();

function say(words, isStale) {
  document.body.classList.toggle("stale", isStale);
  if (freshness.textContent !== words) {
    freshness.textContent = words;
  }
}

// What a person opened, typed or stands on stays as it is.
function syncAttributes(old, fresh) {
  for (const name of old.getAttributeNames()) {
    if (!fresh.hasAttribute(name) && !(name === "open" && old.localName === "details")) {
      old.removeAttribute(name);
    }
  }
  for (const name of fresh.getAttributeNames()) {
    if (old.getAttribute(name) !== fresh.getAttribute(name)) {
      old.setAttribute(name, fresh.getAttribute(name));
    }
  }
}

function isSame(old, fresh) {
  return old.nodeType === fresh.nodeType && old.nodeName === fresh.nodeName
    && (old.nodeType !== Node.ELEMENT_NODE || old.dataset.key === fresh.dataset.key);
}

function sync(old, fresh) {
  if (old.nodeType !== Node.ELEMENT_NODE) {
    if (old.data !== fresh.data) {
      old.data = fresh.data;
    }
    return;
  }
  syncAttributes(old, fresh);
  syncChildren(old, fresh);
}

function syncChildren(old, fresh) {
  const wanted = [...fresh.childNodes];
  let at = old.firstChild;
  for (const child of wanted) {
    let match = at;
    while (match && !isSame(match, child)) {
      match = child.nodeType === Node.ELEMENT_NODE && child.dataset.key ? match.nextSibling : null;
    }
    if (match) {
      while (at !== match) {
        const gone = at;
        at = at.nextSibling;
        gone.remove();
      }
      at = match.nextSibling;
      sync(match, child);
    } else {
      old.insertBefore(child, at);
    }
  }
  while (at) {
    const gone = at;
    at = at.nextSibling;
    gone.remove();
  }
}

function show(content) {
  const region = document.getElementById(content.id);
  if (!region) {
    // The racks are others than they were: begin anew.
    location.reload();
    return;
  }
  const template = document.createElement("template");
  template.innerHTML = content.html;
  syncChildren(region, template.content);
}

const source = new EventSource("/live");
source.addEventListener("region", (event) => {
  const content = JSON.parse(event.data);
  if (content.id !== "line") {
    show(content);
  }
});
// A stream that is refused: somebody may have signed out, here or elsewhere.
source.addEventListener("error", async () => {
  if (source.readyState === EventSource.CLOSED && (await fetch("/api/status", { cache: "no-store" })).status === 401) {
    location.assign("/sign-in");
  }
});
source.addEventListener("clock", (event) => {
  heardAt = Date.now();
  document.getElementById("clock").textContent = event.data;
  say("live", false);
});

setInterval(() => {
  const silentMs = Date.now() - heardAt;
  if (silentMs > staleAfterMs) {
    const seconds = Math.round(silentMs / 1000);
    say(`▲ stale: nothing heard for ${seconds} s. ${source.readyState === EventSource.OPEN
      ? "The controller does not answer." : "The service cannot be reached."}`, true);
  }
}, 1000);
