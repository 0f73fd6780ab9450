// The step from the link into the room. It replaces the link in the browser's history.
location.replace(document.getElementById("in").href);
