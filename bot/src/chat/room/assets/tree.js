// @ts-check
// A tree of moves with the words beside them: main line first, then what branches off. Nothing here is drawn, and
// which moves are legal is for the server to say.

/**
 * A move, or the start, which has none.
 * @typedef {{
 *   id: number, san: string, before: string, after: string, nags: number[], stop: string | null,
 *   parent: Node | null, next: Node[],
 * }} Node
 */

let count = 0;

/**
 * A move behind another.
 * @param {Node | null} parent
 * @param {any} of
 * @returns {Node}
 */
function node(parent, of = {}) {
  count += 1;
  const { san = "", before = "", after = "", nags = [], stop = null } = of;
  return { id: count, san, before, after, nags: [...nags], stop, parent, next: [] };
}

/**
 * The tree of a list of moves as a draft has them: each with its `others`, the side lines in its place.
 * @param {any[]} moves
 * @returns {Node} its start
 */
export function grow(moves) {
  const root = node(null);
  behind(root, moves);
  return root;
}

function behind(parent, moves) {
  let at = parent;
  for (const move of moves) {
    const one = node(at, move);
    at.next.push(one);
    for (const other of move.others ?? []) behind(at, other);
    at = one;
  }
}

/**
 * The tree as a draft has it.
 * @param {Node} root
 */
export function lines(root) {
  return root.next.length ? line(root.next[0], true) : [];
}

/** A line from a move on; the main line of its place takes the side lines along. */
function line(first, main) {
  const moves = [];
  for (let at = first; at; at = at.next[0]) {
    const { san, before, after, nags, stop } = at;
    const others = at !== first || main ? at.parent.next.slice(1).map((other) => line(other, false)) : [];
    moves.push({ san, before, after, nags, stop, others });
  }
  return moves;
}

/**
 * The moves that lead to one, itself the last.
 * @param {Node} to
 * @returns {Node[]}
 */
export function path(to) {
  const nodes = [];
  for (let at = to; at.parent; at = at.parent) nodes.unshift(at);
  return nodes;
}

/**
 * The moves that lead to one, in SAN.
 * @param {Node} to
 */
export const sans = (to) => path(to).map(({ san }) => san);

/**
 * The move of this name behind another; a new one is a side line where there is one already.
 * @param {Node} at
 * @param {string} san
 */
export function play(at, san) {
  const known = at.next.find((one) => one.san === san);
  if (known) return known;
  const one = node(at, { san });
  at.next.push(one);
  return one;
}

/**
 * Takes a move away, with all that follows; gives the one before it.
 * @param {Node} one
 */
export function cut(one) {
  const { parent } = one;
  if (!parent) return one;
  parent.next = parent.next.filter((other) => other !== one);
  return parent;
}

/**
 * The nearest place at or before a move where its line branches off another.
 * @param {Node} of
 * @returns {Node | null}
 */
export function branch(of) {
  for (let at = of; at.parent; at = at.parent) if (at.parent.next[0] !== at) return at;
  return null;
}

/**
 * Makes the line of a move the main one where it branches off.
 * @param {Node} of
 */
export function promote(of) {
  const at = branch(of);
  if (!at?.parent) return;
  at.parent.next = [at, ...at.parent.next.filter((other) => other !== at)];
}

/**
 * The move at the same place of another tree, or the last that it has in common.
 * @param {Node} root
 * @param {string[]} moves
 */
export function find(root, moves) {
  let at = root;
  for (const san of moves) {
    const next = at.next.find((one) => one.san === san);
    if (!next) return at;
    at = next;
  }
  return at;
}

/** Whether members are asked for a move of this tree. @param {Node} root */
export const asks = (root) => root.next.some((one) => one.stop !== null || asks(one));
