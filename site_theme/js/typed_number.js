/* A number as somebody types it: either decimal mark, with a unit or without. Exact throughout. */
(function (Basinside) {
  'use strict';

  const PLACES = 12; // places behind the point of a number in an answer
  const MOST_DIGITS = 12; // digits before it
  const LONGEST = 40; // characters of what is read at all

  const GROUPED = /^[0-9]{1,3}(?: [0-9]{3})+(?![0-9])/;
  const NUMBER = /^([0-9]*)(?:[.,]([0-9]*))?(?![0-9.,])/;
  const UNCLEAR = /^([1-9][0-9]{0,2})[.,]([0-9]{3})(?![0-9.,])/;

  /**
   * @typedef {{unit: [string, string], units: Record<string, [string, string]>}} Units
   *   the unit asked for, of one and of many, and what each spelling is worth in it, as a fraction
   * @typedef {{number: string} | {key: string, holes: Record<string, string>}} Reading
   *   the number in the unit asked for, or what to say
   */

  /** @param {bigint} over @param {bigint} under @returns {string} a decimal, rounded to PLACES */
  function decimal(over, under) {
    const scaled = (over * 10n ** BigInt(PLACES) * 2n + under) / (2n * under);
    const figures = String(scaled).padStart(PLACES + 1, '0');
    const rest = figures.slice(-PLACES).replace(/0+$/, '');
    return figures.slice(0, -PLACES) + (rest && '.') + rest;
  }

  /** @param {string} word @param {Units} asked @returns {[bigint, bigint] | null} */
  function worth(word, asked) {
    if (!word) return [1n, 1n];
    const name = word.toLowerCase();
    const known = Object.hasOwn(asked.units, name) ? asked.units[name] : undefined;
    return known ? [BigInt(known[0]), BigInt(known[1])] : null;
  }

  /**
   * The two numbers that a text can begin with, where its mark can be one for thousands.
   * @param {string} text @returns {{whole: string, part: string} | null}
   */
  function twoWays(text) {
    const [unclear, before = '', after = ''] = UNCLEAR.exec(text) || [];
    return unclear ? { whole: before + after, part: `${before}.${after.replace(/0+$/, '') || '0'}` } : null;
  }

  /**
   * One number with the unit after it, taken from the beginning of a text.
   * @param {string} text @param {Units} asked
   * @returns {{over: bigint, under: bigint, bare: boolean, rest: string} | {key: string, holes: Record<string, string>}}
   */
  function first(text, asked) {
    const grouped = GROUPED.exec(text);
    const line = grouped ? grouped[0].replaceAll(' ', '') + text.slice(grouped[0].length) : text;
    const ways = twoWays(line);
    if (ways) return { key: 'self-test.number-mark', holes: ways };
    const [all, whole = '', part = ''] = NUMBER.exec(line) || [];
    if (!all || !(whole + part)) return { key: 'self-test.number-none', holes: {} };
    if (whole.length > MOST_DIGITS || part.length > PLACES) {
      return { key: 'self-test.number-long', holes: {} };
    }
    const [word = ''] = /^[^0-9]*/.exec(line.slice(all.length)) || [];
    const known = worth(word.trim(), asked);
    if (known === null) {
      const holes = { typed: word.trim(), unit: asked.unit[1] };
      return { key: asked.unit[1] ? 'self-test.number-unit' : 'self-test.number-bare', holes };
    }
    return {
      over: BigInt(whole + part) * known[0],
      under: 10n ** BigInt(part.length) * known[1],
      bare: !word.trim(),
      rest: line.slice(all.length + word.length),
    };
  }

  /**
   * The number of a typed answer in the unit asked for. Several numbers with units add up, as in
   * an hour and some minutes.
   * @param {string} typed @param {Units} asked
   * @returns {Reading}
   */
  function read(typed, asked) {
    const line = typed.slice(0, LONGEST).replace(/\s+/g, ' ').trim().replace('\u2212', '-').replace(/cm2/i, 'cm²');
    const below = line.startsWith('-');
    let rest = below ? line.slice(1).trim() : line;
    let over = 0n;
    let under = 1n;
    let count = 0;
    let bare = false;
    do {
      const one = first(rest, asked);
      if ('key' in one) return one;
      over = over * one.under + one.over * under;
      under *= one.under;
      rest = one.rest;
      bare ||= one.bare;
      count += 1;
    } while (rest);
    // Of two numbers each needs its unit, or nobody knows what the second is.
    if (count > 1 && bare) return { key: 'self-test.number-none', holes: {} };
    const number = decimal(over, under);
    const [whole = ''] = number.split('.');
    if (whole.length > MOST_DIGITS) return { key: 'self-test.number-long', holes: {} };
    return { number: below && !/^[0.]*$/.test(number) ? `-${number}` : number };
  }

  /** @param {string} number @param {Units} asked @returns {string} the number with its unit */
  function shown(number, asked) {
    const unit = asked.unit[number === '1' ? 0 : 1];
    return unit ? `${number}\u00a0${unit}` : number;
  }

  /**
   * Whether a number is below (-1), at (0) or above (1) a fraction.
   * @param {string} number @param {[string, string]} fraction
   * @returns {number}
   */
  function beside(number, [over, under]) {
    const [whole = '', part = ''] = number.replace('-', '').split('.');
    const size = BigInt(whole + part) * (number.startsWith('-') ? -1n : 1n) * BigInt(under);
    const other = BigInt(over) * 10n ** BigInt(part.length);
    return size < other ? -1 : size > other ? 1 : 0;
  }

  Basinside.typedNumber = Object.freeze({ read, shown, twoWays, beside, LONGEST });
})(globalThis.Basinside = globalThis.Basinside || {});
