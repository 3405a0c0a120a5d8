/* Exact fractions, and the one rounding: the browser's copy of core/rounding.py, with the same tolerance. */

const gcd = (a, b) => {
  while (b) [a, b] = [b, a % b];
  return a < 0n ? -a : a;
};
const bits = (n) => n.toString(2).length;
const downTo = (n, d) => n / d - (n % d !== 0n && n < 0n ? 1n : 0n);

/** A fraction of two whole numbers in lowest terms; `d` is over zero. */
export class Exact {
  constructor(n, d = 1n) {
    if (d === 0n) throw new RangeError("a fraction over nothing");
    const common = gcd(n, d) * (d < 0n ? -1n : 1n);
    this.n = n / common;
    this.d = d / common;
  }

  /** A number as its shortest decimal says it, 0.1 is one tenth; or a text such as ".018", "57", "1e-7", "3/8". */
  static of(value) {
    if (value instanceof Exact) return value;
    if (typeof value === "bigint") return new Exact(value);
    const [top, bottom] = String(value).split("/");
    const parts = /^(-?)([0-9]*)(?:\.([0-9]*))?(?:e([+-]?[0-9]+))?$/.exec(top);
    if (!parts || !(parts[2] || parts[3])) throw new RangeError(`no number: ${value}`);
    const places = BigInt(parts[4] ?? 0) - BigInt((parts[3] ?? "").length);
    const digits = BigInt(parts[1] + (parts[2] + (parts[3] ?? "")));
    const whole = places < 0n ? new Exact(digits, 10n ** -places) : new Exact(digits * 10n ** places);
    return bottom ? whole.over(Exact.of(bottom)) : whole;
  }

  /** What a double holds to its last bit. */
  static bitwise(double) {
    let power = 0n;
    while (!Number.isInteger(double)) {
      double *= 2;
      power += 1n;
    }
    return new Exact(BigInt(double), 2n ** power);
  }

  plus(other) { return new Exact(this.n * other.d + other.n * this.d, this.d * other.d); }
  minus(other) { return new Exact(this.n * other.d - other.n * this.d, this.d * other.d); }
  times(other) { return new Exact(this.n * other.n, this.d * other.d); }
  over(other) { return new Exact(this.n * other.d, this.d * other.n); }
  negative() { return new Exact(-this.n, this.d); }
  size() { return this.n < 0n ? this.negative() : this; }
  floor() { return downTo(this.n, this.d); }
  ceil() { return -downTo(-this.n, this.d); }

  /** Under, at or over another fraction or double: -1, 0, 1. */
  against(other) {
    const that = other instanceof Exact ? other : Exact.bitwise(other);
    const gap = this.n * that.d - that.n * this.d;
    return gap < 0n ? -1 : gap > 0n ? 1 : 0;
  }

  /** The nearest double, as division of two whole numbers gives it in Python. */
  double() {
    const size = this.n < 0n ? -this.n : this.n;
    const shift = BigInt(66 - bits(size) + bits(this.d));     // 65 bits or more, and one that says whether anything is left
    const [top, bottom] = shift > 0n ? [size << shift, this.d] : [size, this.d << -shift];
    const kept = ((top / bottom) << 1n) | (top % bottom ? 1n : 0n);
    const whole = Number(kept) / 2 * 2 ** -Number(shift);
    return this.n < 0n ? -whole : whole;
  }

  /** The nearest fraction with a denominator up to `most`, by continued fractions. */
  simplest(most) {
    if (this.d <= most) return this;
    let [p0, q0, p1, q1, n, d] = [0n, 1n, 1n, 0n, this.n, this.d];
    for (;;) {
      const a = downTo(n, d);
      if (q0 + a * q1 > most) break;
      [p0, q0, p1, q1] = [p1, q1, p0 + a * p1, q0 + a * q1];
      [n, d] = [d, n - a * d];
    }
    const k = (most - q0) / q1;
    const [far, near] = [new Exact(p0 + k * p1, q0 + k * q1), new Exact(p1, q1)];
    return near.minus(this).size().against(far.minus(this).size()) <= 0 ? near : far;
  }
}

/** Of a step. A value this close under a graduation counts as on it. */
export const TOLERANCE = new Exact(1n, 10n ** 9n);
const HALF = new Exact(1n, 2n);

/**
 * How many steps a value is brought to; the lines of core/rounding.py, one for one.
 * @param {number|Exact} value
 * @param {Exact} step
 * @param {"down"|"up"|"nearest"} side halves go upward
 * @returns {bigint}
 */
export function wholeSteps(value, step, side) {
  if (typeof value === "number") {
    const steps = value / step.double();
    if (Math.abs(steps) < 1e5) {
      const near = Math.floor(steps + 0.5);
      const off = Math.abs(steps - near);
      if (off < 5e-10) return BigInt(near);
      if (off > 2e-9 && off < 0.5 - 2e-9) return BigInt(side === "nearest" ? near : side === "down" ? Math.floor(steps) : Math.ceil(steps));
    }
  }
  const steps = Exact.of(value).over(step);
  const near = steps.plus(HALF).floor();
  if (side === "nearest" || steps.minus(new Exact(near)).size().against(TOLERANCE) <= 0) return near;
  return side === "down" ? steps.floor() : steps.ceil();
}

/** A value brought to a whole number of steps, in the unit of both. */
export function roundTo(value, step, side) {
  const whole = Exact.of(step);
  if (whole.n <= 0n) throw new RangeError(`a rounding step must be over zero, not ${step}`);
  return new Exact(wholeSteps(value, whole, side)).times(whole);
}

/** The lesser and the greater of fractions. */
export const lesser = (...all) => all.reduce((one, other) => (other.against(one) < 0 ? other : one));
export const greater = (...all) => all.reduce((one, other) => (other.against(one) > 0 ? other : one));

/** The least whole number that all divide. */
export const commonMultiple = (numbers) => numbers.reduce((one, other) => one / gcd(one, other) * other, 1n);

/** A double with so many decimals, a half going to the even figure, as Python writes it. */
export function fixed(double, places) {
  const scaled = Exact.bitwise(double).times(new Exact(10n ** BigInt(places)));
  const down = scaled.floor();
  const rest = scaled.minus(new Exact(down)).against(HALF);
  const digits = (rest > 0 || (rest === 0 && down % 2n) ? down + 1n : down).toString().replace("-", "").padStart(places + 1, "0");
  return (double < 0 ? "-" : "") + (places ? `${digits.slice(0, -places)}.${digits.slice(-places)}` : digits);
}

/** Six figures and no needless zeros, as Python's :g writes numbers of a shop. */
export const plainly = (double) => String(Number(double.toPrecision(6)));

/** Of a whole number of things; a half goes to the even one. */
export function nearestWhole(double) {
  const near = Math.floor(double + 0.5);
  return near - double === 0.5 && near % 2 ? near - 1 : near;
}

/** sqrt(a² + b²) to the last bit: the error of the squares and of the root is put right. */
export function hypotenuse(a, b) {
  if (!a || !b) return Math.abs(a) + Math.abs(b);
  const sum = Exact.bitwise(a).times(Exact.bitwise(a)).plus(Exact.bitwise(b).times(Exact.bitwise(b)));
  const root = Math.sqrt(sum.double());
  return root + sum.minus(Exact.bitwise(root).times(Exact.bitwise(root))).double() / (2 * root);
}
