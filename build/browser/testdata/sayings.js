// Notes whatever the answer's sentence is replaced by, and how the page stands
// at that moment.
window.sayings = [];
new MutationObserver((changes) => {
  const sentence = document.getElementById("sentence");
  if (!changes.some((c) => c.target === sentence)) return;
  const answer = document.getElementById("answer");
  sayings.push({
    Head: document.getElementById("head").textContent,
    Sentence: sentence.textContent,
    State: answer.dataset.state,
    Busy: answer.getAttribute("aria-busy"),
    Stale: document.getElementById("stale-mark").checkVisibility(),
    Figures: document.querySelectorAll("output[id^=fig-] > data").length,
  });
}).observe(document, { childList: true, subtree: true });
