// Notes every text that a reader could see as the answer, frame by frame: as it
// is painted, and as it stands when the frame is done.
window.seenTexts = new Set();
{
  const look = () => {
    for (const node of document.querySelectorAll("#head, #sentence, .figures data")) {
      if (node.checkVisibility({ visibilityProperty: true })) seenTexts.add(node.textContent.replace(/\s+/g, " ").trim());
    }
  };
  const channel = new MessageChannel();
  channel.port1.onmessage = look;
  const frame = () => {
    look();
    channel.port2.postMessage(0);
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}
