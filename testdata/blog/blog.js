// Gives each embed the height that it asks for. Where a page does not, the embed keeps
// the ratio of its frame.
addEventListener("message", ({ source, data }) => {
  if (data?.type !== "wide-berth" || !(data.height > 0)) return;
  const frame = [...document.querySelectorAll("iframe.wide-berth")].find((one) => one.contentWindow === source);
  if (frame) frame.style.height = `${Math.min(data.height, 2000)}px`;
});
