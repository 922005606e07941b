/* Bytes as text and back: UTF-8, base64url without padding, base58btc. */
(function (Basinside) {
  'use strict';

  // The letters of base58btc (draft-msporny-base58-03, table 1).
  const BASE58 = '123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz';
  // Letters that are decoded at all: a key has 49, a signature at most 89 (our own cap).
  const LONGEST = 200;

  /**
   * @param {string} text
   * @returns {Uint8Array}
   */
  function utf8(text) {
    return new TextEncoder().encode(text);
  }

  /**
   * @param {...Uint8Array} parts
   * @returns {Uint8Array}
   */
  function joined(...parts) {
    const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
    let at = 0;
    for (const part of parts) {
      whole.set(part, at);
      at += part.length;
    }
    return whole;
  }

  /**
   * @param {Uint8Array} data
   * @returns {string}
   */
  function hex(data) {
    return [...data].map((octet) => octet.toString(16).padStart(2, '0')).join('');
  }

  /**
   * A whole number as bytes, big end first.
   * @param {bigint} number
   * @param {number} length
   * @returns {Uint8Array}
   */
  function ofNumber(number, length) {
    const text = number.toString(16).padStart(length * 2, '0');
    return Uint8Array.from({ length }, (_, n) => parseInt(text.slice(2 * n, 2 * n + 2), 16));
  }

  /**
   * @param {Uint8Array} data
   * @returns {bigint}
   */
  function number(data) {
    return BigInt('0x0' + hex(data));
  }

  /**
   * @param {Uint8Array} data
   * @returns {string}
   */
  function base64url(data) {
    const plain = btoa(String.fromCharCode(...data));
    return plain.replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
  }

  /**
   * The bytes of base58btc text; throws with one word for a reason.
   * @param {string} text
   * @returns {Uint8Array}
   */
  function fromBase58btc(text) {
    if (text.length > LONGEST) throw new Error('too-long');
    let value = 0n;
    for (const letter of text) {
      const digit = BASE58.indexOf(letter);
      if (digit < 0) throw new Error('not-base58btc');
      value = value * 58n + BigInt(digit);
    }
    const zeros = text.length - text.replace(/^1+/, '').length;
    const length = value === 0n ? 0 : Math.ceil(value.toString(16).length / 2);
    return joined(new Uint8Array(zeros), ofNumber(value, length));
  }

  /**
   * @param {Uint8Array} data
   * @returns {string}
   */
  function base58btc(data) {
    let value = number(data);
    let letters = '';
    while (value > 0n) {
      letters = BASE58[Number(value % 58n)] + letters;
      value /= 58n;
    }
    const first = data.findIndex((octet) => octet !== 0);
    return '1'.repeat(first < 0 ? data.length : first) + letters;
  }

  Basinside.bytes = Object.freeze({
    utf8, joined, hex, number, ofNumber, base64url, base58btc, fromBase58btc,
  });
})(globalThis.Basinside = globalThis.Basinside || {});
