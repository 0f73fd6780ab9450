// @ts-check
// The step from the link into the room. It replaces the link in the browser's history.
const onward = document.getElementById("in");
if (onward instanceof HTMLAnchorElement) location.replace(onward.href);
