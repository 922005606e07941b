/* Exact numbers for the calculators: fractions of whole numbers, rounded and written as the
   generator does (derive/amounts/numbers.py). Values in, values out. */
(function (Basinside) {
  'use strict';

  const FIGURES = 3;

  /** @typedef {{n: bigint, d: bigint}} Ratio a number as n / d, in lowest terms, d above nought */

  /** @param {bigint} one @param {bigint} other */
  function common(one, other) {
    let [a, b] = [one < 0n ? -one : one, other];
    while (b) [a, b] = [b, a % b];
    return a;
  }

  /** @param {bigint | number} n @param {bigint | number} [d] @returns {Ratio} */
  function ratio(n, d = 1n) {
    const [top, below] = [BigInt(n), BigInt(d)];
    const shared = common(top, below < 0n ? -below : below) || 1n;
    const share = below < 0n ? -shared : shared;
    return { n: top / share, d: below / share };
  }

  /**
   * A plain decimal as it is written.
   * @param {string} text @returns {Ratio}
   */
  function read(text) {
    const [whole = '', rest = ''] = text.split('.');
    return ratio(BigInt(whole + rest), 10n ** BigInt(rest.length));
  }

  /** @param {Ratio} a @param {Ratio} b */
  const times = (a, b) => ratio(a.n * b.n, a.d * b.d);
  /** @param {Ratio} a @param {Ratio} b b not nought */
  const over = (a, b) => ratio(a.n * b.d, a.d * b.n);
  /** @param {Ratio} a @param {Ratio} b */
  const plus = (a, b) => ratio(a.n * b.d + b.n * a.d, a.d * b.d);
  /** @param {Ratio} a @param {Ratio} b */
  const minus = (a, b) => ratio(a.n * b.d - b.n * a.d, a.d * b.d);
  /** @param {Ratio} a @param {Ratio} b below nought when a is the smaller */
  const order = (a, b) => {
    const apart = a.n * b.d - b.n * a.d;
    return apart < 0n ? -1 : apart > 0n ? 1 : 0;
  };
  /** @param {Ratio} a @param {Ratio} b */
  const least = (a, b) => (order(a, b) <= 0 ? a : b);

  /** @param {Ratio} a */
  function floor(a) {
    const whole = a.n / a.d;
    return a.n < 0n && whole * a.d !== a.n ? whole - 1n : whole;
  }

  /** @param {Ratio} a */
  function ceil(a) {
    const whole = floor(a);
    return whole * a.d === a.n ? whole : whole + 1n;
  }

  /** @param {Ratio} a what is not negative; the place of its last shown figure */
  function step(a) {
    let found = ratio(1);
    if (a.n <= 0n) return found;
    const [ten, most] = [ratio(10), ratio(10n ** BigInt(FIGURES))];
    while (order(a, times(most, found)) >= 0) found = times(found, ten);
    while (order(times(a, ten), times(most, found)) < 0) found = over(found, ten);
    return found;
  }

  /** @param {Ratio} a */
  const up = (a) => times(ratio(ceil(over(a, step(a)))), step(a));
  /** @param {Ratio} a */
  const down = (a) => times(ratio(floor(over(a, step(a)))), step(a));
  /** @param {Ratio} a */
  const tenthsDown = (a) => ratio(floor(times(a, ratio(10))), 10);

  /**
   * A number that has a finite decimal, in full.
   * @param {Ratio} a
   */
  function plain(a) {
    let [places, scaled] = [0, a];
    while (scaled.d !== 1n) [places, scaled] = [places + 1, times(scaled, ratio(10))];
    const sign = scaled.n < 0n ? '-' : '';
    const figures = String(sign ? -scaled.n : scaled.n).padStart(places + 1, '0');
    const whole = figures.slice(0, figures.length - places);
    const rest = figures.slice(figures.length - places);
    return sign + whole + (rest ? `.${rest}` : '');
  }

  Basinside.exact = Object.freeze({
    ratio, read, times, over, plus, minus, order, least, floor, ceil, up, down, tenthsDown, plain,
  });
})(globalThis.Basinside = globalThis.Basinside || {});
