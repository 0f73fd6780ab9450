// @ts-check
// Putting list items in another order: by dragging a handle, with mouse, pen or finger. (Buttons that do
// the same stand beside each handle.)

/**
 * Lets the items of `list` be dragged by their `.handle`. `dropped(item, to)` is told the new place once
 * an item is let go somewhere else.
 */
export function carry(list, dropped) {
  list.addEventListener("pointerdown", (event) => {
    const handle = event.target.closest(".handle");
    const item = handle?.closest("li");
    if (!item || item.parentElement !== list || event.button !== 0) return;
    event.preventDefault();
    const start = [...list.children].indexOf(item);
    item.classList.add("carried");
    // Heard on the window: an element that is moved within its list loses a captured pointer.

    const move = ({ clientY }) => {
      const others = [...list.children].filter((other) => other !== item);
      const next = others.find((other) => {
        const box = other.getBoundingClientRect();
        return clientY < box.top + box.height / 2;
      });
      if ((next ?? null) !== item.nextElementSibling) list.insertBefore(item, next ?? null);
      // Near an edge of the window the page follows.
      if (clientY < 60) window.scrollBy(0, -12);
      else if (clientY > window.innerHeight - 60) window.scrollBy(0, 12);
    };
    const end = (over) => {
      window.removeEventListener("pointermove", move);
      window.removeEventListener("pointerup", end);
      window.removeEventListener("pointercancel", end);
      item.classList.remove("carried");
      const to = [...list.children].indexOf(item);
      if (over.type === "pointercancel") {
        const others = [...list.children].filter((other) => other !== item);
        list.insertBefore(item, others[start] ?? null);
      } else if (to !== start) dropped(item, to);
    };
    window.addEventListener("pointermove", move);
    window.addEventListener("pointerup", end);
    window.addEventListener("pointercancel", end);
  });
}
