/* Whether a value has the shape that a JSON Schema of ours describes. Only the words that our own
   schemas use are known; any other word throws, so that no clause is passed over in silence. */
(function (Basinside) {
  'use strict';

  const SAID_ONLY = new Set(['title', 'description', 'default', '$defs', 'additionalProperties']);

  /** @type {Record<string, (value: any) => boolean>} */
  const TYPES = {
    string: (value) => typeof value === 'string',
    integer: (value) => Number.isSafeInteger(value),
    boolean: (value) => typeof value === 'boolean',
    null: (value) => value === null,
    array: (value) => Array.isArray(value),
    object: (value) => value !== null && typeof value === 'object' && !Array.isArray(value),
  };

  /**
   * Checks one word of a schema: `said` is what the schema says under that word.
   * @type {Record<string, (said: any, value: any, ask: (schema: any, value: any) => boolean,
   *   schema: any) => boolean>}
   */
  const WORDS = {
    type: (said, value) => TYPES[said]?.(value) ?? false,
    const: (said, value) => Basinside.sameValue(said, value),
    enum: (said, value) => said.some((/** @type {any} */ each) => Basinside.sameValue(each, value)),
    pattern: (said, value) => new RegExp(said, 'u').test(value),
    minLength: (said, value) => [...value].length >= said,
    maxLength: (said, value) => [...value].length <= said,
    minItems: (said, value) => value.length >= said,
    maxItems: (said, value) => value.length <= said,
    anyOf: (said, value, ask) => said.some((/** @type {any} */ each) => ask(each, value)),
    prefixItems: (said, value, ask) =>
      said.every((/** @type {any} */ each, /** @type {number} */ n) => ask(each, value[n])),
    items: (said, value, ask, schema) =>
      value
        .slice(schema.prefixItems ? schema.prefixItems.length : 0)
        .every((/** @type {any} */ each) => ask(said, each)),
    required: (said, value) => said.every((/** @type {string} */ name) => name in value),
    properties: (said, value, ask) =>
      Object.keys(said).every((name) => !(name in value) || ask(said[name], value[name])),
  };

  /**
   * @param {any} root
   * @param {any} schema
   * @returns {any}
   */
  function followed(root, schema) {
    const named = /^#\/\$defs\/(.+)$/.exec(schema.$ref || '');
    return named ? root.$defs[named[1] || ''] : schema;
  }

  /**
   * Whether a value has a schema's shape.
   * @param {any} root the whole schema
   * @param {any} value
   * @param {any} [part] the part of the schema to ask, the whole by default
   * @returns {boolean}
   */
  function hasShape(root, value, part) {
    /** @type {(schema: any, value: any) => boolean} */
    const ask = (given, asked) => {
      const schema = followed(root, given);
      // The type first: the other words take its kind for granted.
      if (schema.type !== undefined && !WORDS.type?.(schema.type, asked, ask, schema)) return false;
      return Object.keys(schema).every((word) => {
        if (SAID_ONLY.has(word)) return true;
        const check = WORDS[word];
        if (!check) throw new Error('a schema word that this page does not know: ' + word);
        return check(schema[word], asked, ask, schema);
      });
    };
    return ask(part || root, value);
  }

  /**
   * The path of the first member that a schema does not name, or nothing. Members below those of
   * `unjudged` are not looked at.
   * @param {any} root
   * @param {any} value a value that has the shape
   * @param {string[]} unjudged
   * @returns {string}
   */
  function stranger(root, value, unjudged) {
    /** @type {(given: any, value: any, path: string) => string} */
    const walk = (given, asked, path) => {
      const schema = followed(root, given);
      if (schema.anyOf) {
        const fitting = schema.anyOf.find((/** @type {any} */ each) => hasShape(root, asked, each));
        return fitting ? walk(fitting, asked, path) : '';
      }
      if (Array.isArray(asked)) {
        const kinds = schema.prefixItems || [];
        return first(asked.map((each, n) => walk(kinds[n] || schema.items || {}, each, path)));
      }
      if (!schema.properties || !TYPES.object?.(asked)) return '';
      return first(
        Object.keys(asked).map((name) => {
          const own = schema.properties[name];
          if (!own) return path + name;
          return unjudged.includes(path + name) ? '' : walk(own, asked[name], `${path}${name}.`);
        })
      );
    };
    return walk(root, value, '');
  }

  /** @param {string[]} found */
  function first(found) {
    return found.find((each) => each !== '') || '';
  }

  Basinside.shape = Object.freeze({ hasShape, stranger });
})(globalThis.Basinside = globalThis.Basinside || {});
