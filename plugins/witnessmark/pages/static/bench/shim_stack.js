/* A thickness from the shims in stock, found exactly: the browser's copy of workings/shim_stack.py (stack) and shim_search.py. */
import { commonMultiple, Exact, nearestWhole } from "./exact.js";
import { outcome, refused, run } from "./given.js";
import { inUnit, value, words } from "./printed.js";

const [MOST_KINDS, MOST_PIECES, USUAL_MOST, FARTHEST] = [10, 10, 6, 2_000_000n];

/** @param {Object<string, string>} texts thickness, stock, most pieces */
export const shimStack = (texts) => run("shim-stack", texts, compute);

const least = (all, key) => all.reduce((one, other) => (key(other, one) < 0 ? other : one));
const size = (number) => (number < 0n ? -number : number);
const step = (quantity) => new Exact(1n, 10n ** BigInt(Math.min(6, quantity.decimals)));

/** Exactly, to a millionth of the unit it was given in. */
function metres(given, end) {
  const number = given.quantity[end];
  const simple = number.simplest(10n ** 6n);
  return (simple.n ? simple : number).times(given.quantity.unit.factor);
}

function compute(given) {
  const pieces = given.stock.several;
  const { unit } = pieces[0].quantity;
  const most = given["most pieces"] ? nearestWhole(given["most pieces"].likely) : USUAL_MOST;
  const fine = step(pieces.map((each) => each.quantity).reduce((one, other) => (other.decimals > one.decimals ? other : one)));
  const exact = [...pieces.map((each) => metres(each, "low")), metres(given.thickness, "low"), metres(given.thickness, "high")];
  const small = commonMultiple(exact.map((each) => each.d));      // everything is counted in one small unit
  const counted = exact.map((each) => each.n * (small / each.d));
  const [low, high] = counted.splice(-2);
  const own = new Map(counted.map((count, at) => [count, pieces[at]]).filter(([, each]) => each.quantity.unit === unit).map(([count, each]) => [count, step(each.quantity)]));
  const stock = [...new Set(counted)].sort((one, other) => (one > other ? -1 : 1));

  const si = (count) => new Exact(count, small).double();
  const thickness = (count, to = fine) => inUnit(si(count), "length", unit, to);
  const length = (name, count) => value(name, "length", si(count), unit, fine);
  function told(stack) {
    const bare = (piece) => thickness(piece, own.get(piece) ?? fine).slice(0, -unit.symbol.length).trim();
    const kinds = [...new Set(stack)].map((piece) => [stack.filter((other) => other === piece).length, bare(piece)]);
    return `${kinds.map(([count, piece]) => (count > 1 ? `${count} × ${piece}` : piece)).join(" + ")} ${unit.symbol}`;
  }
  function never(count) {
    const any = inAnyNumber(stock, count);
    const more = any === false ? ", nor in any number" : any ? `, but in more than ${most}` : "";
    return `${thickness(count)} cannot be made from this stock in ${most} pieces${more}`;
  }

  if (stock.length > MOST_KINDS || most < 1 || most > MOST_PIECES) {
    return refused(`more than ${MOST_KINDS} thicknesses or ${MOST_PIECES} pieces are not tried`, "a stack of more than six pieces springs: machine a spacer");
  }
  const made = stacks(stock, most, high + stock[0]);
  const totals = [...made.keys()];
  const inside = totals.filter((total) => low <= total && total <= high);
  if (inside.length) {
    const off = (total) => size(2n * total - low - high);
    const best = least(inside, (one, other) => Number(off(one) - off(other)) || made.get(one).length - made.get(other).length || Number(one - other));
    return outcome([words("stack", told(made.get(best))), length("stack thickness", best), value("pieces", "count", made.get(best).length, "", "1")]);
  }
  const under = totals.filter((total) => total < low).reduce((one, other) => (one === null || other > one ? other : one), null);
  const over = totals.filter((total) => total > high).reduce((one, other) => (one === null || other < one ? other : one), null);
  const found = [["thinner", under], ["thicker", over]].filter(([, total]) => total !== null)
    .flatMap(([name, total]) => [words(`${name} stack`, told(made.get(total))), length(`nearest ${name}`, total)]);
  if (!found.length) return refused(never(low), "get other shims");
  return outcome(found, [], [low === high ? never(low) : `nothing between ${thickness(low)} and ${thickness(high)} can be made from this stock in ${most} pieces`]);
}

/** Every sum up to a limit that at most so many pieces make, each with the fewest pieces, thickest first. */
function stacks(pieces, most, limit) {
  const made = new Map();
  let level = new Map([[0n, []]]);
  for (let round = 0; round < most; round += 1) {
    const following = new Map();
    for (const [total, stack] of level) {
      for (const piece of pieces) {
        const sum = total + piece;
        if (sum <= limit && !made.has(sum) && !following.has(sum)) {
          const at = stack.findIndex((other) => other < piece);
          following.set(sum, at < 0 ? [...stack, piece] : stack.toSpliced(at, 0, piece));
        }
      }
    }
    for (const [sum, stack] of following) made.set(sum, stack);
    level = following;
  }
  return made;
}

/** Whether any number of pieces makes a sum; null where that is too far to look. */
function inAnyNumber(pieces, target) {
  if (target > FARTHEST) return null;
  let reached = 1n;
  const mask = (1n << (target + 1n)) - 1n;
  for (const piece of pieces) {
    for (let stride = piece; stride <= target; stride *= 2n) reached |= (reached << stride) & mask;   // 1, 2, 4 … of the piece: together any number of it
  }
  return Boolean((reached >> target) & 1n);
}
