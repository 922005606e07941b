/* Canonical JSON (RFC 8785) without floats: the same text as the Python side writes. */
(function (Basinside) {
  'use strict';

  const HALF_PAIR = /[\ud800-\udfff]/u;

  /**
   * @param {string} text
   * @returns {string}
   */
  function quoted(text) {
    if (HALF_PAIR.test(text)) throw new TypeError('half of a surrogate pair');
    // JSON.stringify writes exactly the escapes that RFC 8785 asks for.
    return JSON.stringify(text);
  }

  /**
   * The canonical text of a value: strings, integers of at most 2^53 - 1 either way, truths, null,
   * lists and objects. Throws TypeError for everything else.
   * @param {unknown} value
   * @returns {string}
   */
  Basinside.canonical = function (value) {
    if (value === null || value === true || value === false) return String(value);
    if (typeof value === 'string') return quoted(value);
    if (typeof value === 'number') {
      if (!Number.isSafeInteger(value)) throw new TypeError('not a whole number in range');
      return String(value);
    }
    if (Array.isArray(value)) return `[${value.map(Basinside.canonical).join(',')}]`;
    if (typeof value !== 'object') throw new TypeError('not a JSON value');
    const whole = /** @type {Record<string, unknown>} */ (value);
    // The default order of sort is that of UTF-16 code units, as the standard asks.
    const members = Object.keys(whole).sort();
    const written = members.map((key) => `${quoted(key)}:${Basinside.canonical(whole[key])}`);
    return `{${written.join(',')}}`;
  };

  /**
   * The canonical bytes of a value.
   * @param {unknown} value
   * @returns {Uint8Array}
   */
  Basinside.canonicalBytes = function (value) {
    return Basinside.bytes.utf8(Basinside.canonical(value));
  };

  /**
   * Whether two values have the same canonical text; a value that has none equals nothing.
   * @param {unknown} one
   * @param {unknown} other
   * @returns {boolean}
   */
  Basinside.sameValue = function (one, other) {
    try {
      return Basinside.canonical(one) === Basinside.canonical(other);
    } catch (error) {
      if (error instanceof TypeError) return false;
      throw error;
    }
  };
})(globalThis.Basinside = globalThis.Basinside || {});
