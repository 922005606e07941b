/* The trust list of the folder, and the six words that stand for its root key; as certify/trust.py
   and seal/codes.py have it. */
(function (Basinside) {
  'use strict';

  const TRUST_LIST_SIGNATURE = 'trust-list-signature';
  const WORD_BITS = 11n;
  const PHRASE_WORDS = 6;
  const TELLING_LETTERS = 4;

  /**
   * The six words of a root key: the first 66 bits of the SHA-256 of its did:key text.
   * @param {string} did
   * @param {string[]} words the 2,048 words
   * @returns {Promise<string>}
   */
  async function fingerprint(did, words) {
    const { bytes, digest } = Basinside;
    const hashed = bytes.number(await digest.digest(bytes.utf8(did)));
    const bits = hashed >> (256n - WORD_BITS * BigInt(PHRASE_WORDS));
    return Array.from({ length: PHRASE_WORDS }, (_, n) => {
      const place = WORD_BITS * BigInt(PHRASE_WORDS - 1 - n);
      return words[Number((bits >> place) & 2047n)];
    }).join(' ');
  }

  /**
   * Typed words as we write them, or what is wrong with them. The first four letters are enough.
   * @param {string} typed
   * @param {string[]} words
   * @returns {{words: string} | {stray: string} | {count: number}}
   */
  function readWords(typed, words) {
    const parts = typed.toLowerCase().split(/[^a-z]+/).filter((part) => part);
    const found = [];
    for (const part of parts) {
      const start = part.slice(0, TELLING_LETTERS);
      const word = words.find((each) => each.slice(0, TELLING_LETTERS) === start);
      if (word === undefined || !word.startsWith(part)) return { stray: part.slice(0, 20) };
      found.push(word);
    }
    return found.length === PHRASE_WORDS ? { words: found.join(' ') } : { count: found.length };
  }

  /** @param {any} key */
  function formsAgree(key) {
    const { bytes, digest } = Basinside;
    try {
      const { x, y } = digest.pointOf(key.did);
      const jwk = { kty: 'EC', crv: 'P-256', x: bytes.base64url(x), y: bytes.base64url(y) };
      return Basinside.sameValue(jwk, key.jwk);
    } catch (error) {
      return false;
    }
  }

  /**
   * The trust list when it has the shape of one, and whether its own root key signed it as it is.
   * @param {any} plain
   * @param {any} schema
   * @returns {Promise<{trust: any, finding: Finding}>}
   */
  async function checkTrustList(plain, schema) {
    const { fails, holds } = Basinside;
    /** @type {(reason: string) => {trust: any, finding: any}} */
    const failing = (reason) => ({ trust: plain, finding: fails(TRUST_LIST_SIGNATURE, { reason }) });
    if (!Basinside.shape.hasShape(schema, plain)) {
      return { ...failing('not-a-trust-list'), trust: null };
    }
    const found = await Basinside.checkSignature(plain);
    if (found.verdict !== 'holds') return failing(found.data.reason);
    if (found.data.key !== plain.root.did) return failing('not-by-root');
    const signers = plain.signers || [];
    const keys = [plain.root, ...signers];
    if (!keys.every(formsAgree)) return failing('key-forms-differ');
    if (new Set(keys.map((key) => key.did)).size !== keys.length) return failing('key-listed-twice');
    const data = { root: plain.root.did, issued: plain.issued };
    return { trust: plain, finding: holds(TRUST_LIST_SIGNATURE, data) };
  }

  Basinside.trust = Object.freeze({ fingerprint, readWords, checkTrustList });
})(globalThis.Basinside = globalThis.Basinside || {});
