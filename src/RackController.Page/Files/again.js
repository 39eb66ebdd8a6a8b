// Looks again by itself, where a page waits for something; once the service answers, if it is starting again.
"use strict";

const wait = document.querySelector("script[data-after-s]").dataset;

async function lookAgain() {
  try {
    await fetch("/health/live", { cache: "no-store" });
    location.replace(wait.address);
  } catch {
    setTimeout(lookAgain, 1000);
  }
}

setTimeout(lookAgain, wait.afterS * 1000);
