/* Digests and signatures through the browser's own Web Crypto, which old or plain browsers lack. */
(function (Basinside) {
  'use strict';

  // The curve P-256 (FIPS 186-5 and SP 800-186, section 3.2.1.3): y^2 = x^3 - 3x + b modulo p.
  const P = BigInt('0xffffffff00000001000000000000000000000000ffffffffffffffffffffffff');
  const B = BigInt('0x5ac635d8aa3a93e7b3ebbd55769886bc651d06b0cc53b0f63bce3c3e27d2604b');
  const PREFIX = '8024'; // marks a compressed P-256 point (W3C Controlled Identifiers 1.0, 2.2.2)
  const CURVE = { name: 'ECDSA', namedCurve: 'P-256' };

  /**
   * Whether this browser can check signatures at all.
   * @returns {boolean}
   */
  function canCheck() {
    return Boolean(globalThis.crypto && crypto.subtle && typeof BigInt === 'function');
  }

  /**
   * @param {Uint8Array} data
   * @param {string} [name]
   * @returns {Promise<Uint8Array>}
   */
  async function digest(data, name) {
    return new Uint8Array(await crypto.subtle.digest(name || 'SHA-256', /** @type {any} */ (data)));
  }

  /**
   * A UUID of version 5 (RFC 9562, section 5.5).
   * @param {string} space a UUID
   * @param {string} name
   * @returns {Promise<string>}
   */
  async function uuid5(space, name) {
    const { bytes } = Basinside;
    const first = bytes.ofNumber(BigInt('0x' + space.replaceAll('-', '')), 16);
    const made = (await digest(bytes.joined(first, bytes.utf8(name)), 'SHA-1')).slice(0, 16);
    made[6] = ((made[6] || 0) & 0x0f) | 0x50;
    made[8] = ((made[8] || 0) & 0x3f) | 0x80;
    return bytes.hex(made).replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
  }

  /**
   * @param {bigint} base
   * @param {bigint} exponent
   * @returns {bigint}
   */
  function power(base, exponent) {
    let result = 1n;
    let square = base % P;
    for (let rest = exponent; rest > 0n; rest >>= 1n) {
      if (rest & 1n) result = (result * square) % P;
      square = (square * square) % P;
    }
    return result;
  }

  /**
   * The x and y of a did:key, 32 bytes each; throws with one word for a reason, as multikey.py does.
   * The point is taken apart here, because not every browser imports a compressed one.
   * @param {string} did
   * @returns {{x: Uint8Array, y: Uint8Array}}
   */
  function pointOf(did) {
    const { bytes } = Basinside;
    const text = did.startsWith('did:key:') ? did.slice(8) : '';
    if (!text.startsWith('z')) throw new Error('not-did-key');
    const data = bytes.fromBase58btc(text.slice(1));
    const sign = data[2];
    if (!bytes.hex(data).startsWith(PREFIX) || data.length !== 35 || (sign !== 2 && sign !== 3)) {
      throw new Error('not-p256');
    }
    const x = /** @type {bigint} */ (bytes.number(data.slice(3)));
    const square = (((x * x * x - 3n * x + B) % P) + P) % P;
    const root = power(square, (P + 1n) / 4n);
    if (x >= P || (root * root) % P !== square) throw new Error('not-on-curve');
    const y = (root & 1n) === BigInt(sign & 1) ? root : P - root;
    if ('z' + bytes.base58btc(data) !== text) throw new Error('other-spelling');
    return { x: bytes.ofNumber(x, 32), y: bytes.ofNumber(y, 32) };
  }

  /**
   * Whether a raw signature of 64 bytes is the key's over the data (ECDSA with SHA-256).
   * @param {{x: Uint8Array, y: Uint8Array}} point
   * @param {Uint8Array} signature
   * @param {Uint8Array} data
   * @returns {Promise<boolean>}
   */
  async function verify(point, signature, data) {
    const whole = Basinside.bytes.joined(Uint8Array.of(4), point.x, point.y);
    const key = await crypto.subtle.importKey('raw', whole, CURVE, false, ['verify']);
    const how = { name: 'ECDSA', hash: 'SHA-256' };
    return crypto.subtle.verify(how, key, /** @type {any} */ (signature), /** @type {any} */ (data));
  }

  Basinside.digest = Object.freeze({ canCheck, digest, uuid5, pointOf, verify });
})(globalThis.Basinside = globalThis.Basinside || {});
