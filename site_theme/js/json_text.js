/* Reads JSON that someone handed us, strictly: what two readers could understand differently is
   refused (repeated keys, floats, large numbers, half pairs), and so is what only costs memory. */
(function (Basinside) {
  'use strict';

  const DEEPEST = 64; // levels of nesting, as the Python reader has it
  const LARGEST = 4 * 1024 * 1024; // letters of a file that a page reads at all (our own cap)
  const TOKEN = /[ \t\n\r]*(?:("(?:[^"\\\u0000-\u001f]|\\.)*")|(-?[0-9][0-9.eE+-]*)|([a-zA-Z]+)|([[\]{}:,]))/y;
  const HALF_PAIR = /[\ud800-\udfff]/u;

  /** What is wrong with a text: `reason` names a phrase, `line` and `column` count from 1. */
  class JsonTextError extends Error {
    /**
     * @param {string} reason
     * @param {string} text
     * @param {number} position
     */
    constructor(reason, text, position) {
      super(reason);
      this.reason = reason;
      const before = text.slice(0, position).split('\n');
      this.line = before.length;
      this.column = (before[before.length - 1] || '').length + 1;
    }
  }

  /**
   * The value of a JSON text. Objects have no prototype, so that no key means anything to us.
   * Throws JsonTextError, and nothing else, whatever the text is.
   * @param {string} given
   * @returns {unknown}
   */
  Basinside.readJson = function (given) {
    const text = given.startsWith('\ufeff') ? given.slice(1) : given;
    if (text.length > LARGEST) throw new JsonTextError('too-large', '', 0);
    let at = 0;
    /** @type {RegExpExecArray} */
    let token;

    /** @type {(reason: string) => never} */
    const refuse = (reason) => { throw new JsonTextError(reason, text, at); };
    const mark = () => token[4];
    const next = () => {
      at = TOKEN.lastIndex;
      const found = TOKEN.exec(text);
      if (!found) refuse('not-json');
      token = /** @type {RegExpExecArray} */ (found);
    };
    const string = () => {
      let value = '';
      try {
        value = JSON.parse(token[1] || '');
      } catch (error) {
        if (!(error instanceof SyntaxError)) throw error;
        refuse('not-json');
      }
      if (HALF_PAIR.test(value)) refuse('half-pair');
      return value;
    };
    const whole = () => {
      const written = token[2] || '';
      if (!/^-?[0-9]+$/.test(written)) refuse('not-whole');
      if (/^-?0[0-9]/.test(written)) refuse('not-json');
      if (!Number.isSafeInteger(Number(written))) refuse('not-whole');
      return Number(written) + 0;
    };
    /** @type {(depth: number) => unknown} */
    const value = (depth) => {
      if (token[1] !== undefined) return string();
      if (token[2] !== undefined) return whole();
      if (token[3] === 'true') return true;
      if (token[3] === 'false') return false;
      if (token[3] === 'null') return null;
      if (depth > DEEPEST) refuse('too-deep');
      if (mark() === '[') return list(depth);
      if (mark() === '{') return object(depth);
      return refuse('not-json');
    };
    /** @type {(depth: number) => unknown[]} */
    const list = (depth) => {
      /** @type {unknown[]} */
      const values = [];
      next();
      if (mark() === ']') return values;
      for (;;) {
        values.push(value(depth + 1));
        next();
        if (mark() === ']') return values;
        if (mark() !== ',') refuse('not-json');
        next();
      }
    };
    /** @type {(depth: number) => Record<string, unknown>} */
    const object = (depth) => {
      const members = Object.create(null);
      next();
      if (mark() === '}') return members;
      for (;;) {
        if (token[1] === undefined) refuse('not-json');
        const key = string();
        if (key in members) refuse('repeated-key');
        next();
        if (mark() !== ':') refuse('not-json');
        next();
        members[key] = value(depth + 1);
        next();
        if (mark() === '}') return members;
        if (mark() !== ',') refuse('not-json');
        next();
      }
    };

    TOKEN.lastIndex = 0;
    next();
    const read = value(1);
    at = TOKEN.lastIndex;
    if (!/^[ \t\n\r]*$/.test(text.slice(at))) refuse('not-json');
    return read;
  };

  Basinside.JsonTextError = JsonTextError;
})(globalThis.Basinside = globalThis.Basinside || {});
