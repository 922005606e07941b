/* Looking words up in the index that the generator wrote (render/search_index.py). Values in,
   values out. */
(function (Basinside) {
  'use strict';

  const IN_TITLE = 2; // a word of the title counts twice one of the text behind it
  const WHOLE_WORD = 2; // a whole word counts twice its beginning
  const PAGE_NAME = 3; // a word of the page's own name
  const EVERYWHERE = 0.2; // a word of this share of all texts may be missing, as “the” may

  /**
   * @typedef {{pages: [string, string, string][], titles: string[], texts: any[][],
   *   terms: string[], in_titles: number[][], in_texts: number[][], same: string[][][]}} Index
   * @typedef {{inTexts: Uint8Array, size: number, onPages: Uint8Array}} Weights
   *   what a word weighs in each text, in how many it stands, what it weighs in each page's name
   * @typedef {{page: number, score: number, hits: {title: string, anchor: string}[]}} Found
   */

  /**
   * The words of a text as the index has them: small letters without accents.
   * @param {string} text
   * @returns {string[]}
   */
  function folded(text) {
    const bare = text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
    return bare.match(/[\p{L}\p{N}]+(?:[.,]\p{Nd}+)*/gu) || [];
  }

  /**
   * The first place in a sorted list that is not before a word.
   * @param {string[]} terms @param {string} word
   * @returns {number}
   */
  function firstAt(terms, word) {
    let low = 0;
    let high = terms.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((terms[middle] || '') < word) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** @type {WeakMap<Index, string[][]>} */
  const knownNames = new WeakMap();

  /**
   * The folded words of each page's name, worked out once an index.
   * @param {Index} index
   */
  function namesOf(index) {
    const known = knownNames.get(index) || index.pages.map(([, name]) => folded(name));
    knownNames.set(index, known);
    return known;
  }

  /**
   * Where a word stands, or one that begins with it.
   * @param {Index} index @param {string} word
   * @returns {Weights}
   */
  function weightsOf(index, word) {
    const inTitles = new Uint8Array(index.titles.length);
    const inTexts = new Uint8Array(index.texts.length);
    /** @type {(into: Uint8Array, steps: number[] | undefined, weight: number) => void} */
    const mark = (into, steps, weight) => {
      let number = 0;
      for (const step of steps || []) {
        number += step;
        if ((into[number] || 0) < weight) into[number] = weight;
      }
    };
    for (let at = firstAt(index.terms, word); at < index.terms.length; at += 1) {
      const term = index.terms[at] || '';
      if (!term.startsWith(word)) break;
      const whole = term === word ? WHOLE_WORD : 1;
      mark(inTitles, index.in_titles[at], IN_TITLE * whole);
      mark(inTexts, index.in_texts[at], whole);
    }
    let size = 0;
    index.texts.forEach(([title], text) => {
      const weight = Math.max(inTexts[text] || 0, inTitles[title] || 0);
      inTexts[text] = weight;
      if (weight) size += 1;
    });
    const onPages = Uint8Array.from(namesOf(index), (name) =>
      name.some((each) => each.startsWith(word)) ? PAGE_NAME : 0
    );
    return { inTexts, size, onPages };
  }

  /**
   * What a query asks for: a list of demands, each met by any of its phrases. Words that mean the
   * same are added; the longest phrase that stands in the query counts.
   * @param {Index} index @param {string[]} words
   * @returns {string[][][]}
   */
  function demands(index, words) {
    const asked = [];
    for (let at = 0; at < words.length; ) {
      let group = null;
      let length = 1;
      for (const each of index.same) {
        for (const phrase of each) {
          const here = words.slice(at, at + phrase.length);
          const last = here.length === phrase.length && here.every((word, n) => word === phrase[n]);
          if (last && (group === null || phrase.length > length)) {
            group = each;
            length = phrase.length;
          }
        }
      }
      const own = words.slice(at, at + length);
      asked.push([own, ...(group || [])]);
      at += length;
    }
    return asked;
  }

  /**
   * The singular of a word that found nothing, or the word.
   * @param {Index} index @param {string} word
   */
  function orSingular(index, word) {
    const at = firstAt(index.terms, word);
    if ((index.terms[at] || '').startsWith(word) || !/[^s]s$/.test(word)) return word;
    return word.slice(0, -1);
  }

  /**
   * The pages that a query finds, best first, each with its places. Where nothing has all of its
   * words, what has most of them is shown.
   * @param {Index} index @param {string} query
   * @returns {Found[]}
   */
  function find(index, query) {
    const all = look(index, query, 0);
    return all.length ? all : look(index, query, 1);
  }

  /**
   * @param {Index} index @param {string} query
   * @param {number} missing how many of the words that tell something may be missing
   * @returns {Found[]}
   */
  function look(index, query, missing) {
    const words = folded(query).map((word) => orSingular(index, word));
    if (!words.length) return [];
    /** @type {Map<string, Weights>} */
    const looked = new Map();
    const looking = (/** @type {string} */ word) => {
      const known = looked.get(word) || weightsOf(index, word);
      looked.set(word, known);
      return known;
    };
    const usual = EVERYWHERE * index.texts.length;
    const asked = demands(index, words).map((phrases) => {
      const weights = phrases.map((phrase) => phrase.map(looking));
      return { weights, telling: !weights.every((each) => each.every(({ size }) => size > usual)) };
    });
    const telling = asked.filter((each) => each.telling).length;
    if (missing >= telling && missing > 0) return [];
    const every = [...looked.values()];
    /** @type {Map<number, Found>} */
    const found = new Map();
    index.texts.forEach(([title, ...places], text) => {
      const inText = every.some(({ inTexts }) => inTexts[text]);
      for (const [page, anchor] of places) {
        if (!inText && anchor) continue;
        let score = 0;
        let unmet = 0;
        for (const { weights, telling: counts } of asked) {
          let best = 0;
          for (const phrase of weights) {
            let least = Infinity;
            for (const { inTexts, onPages } of phrase) {
              least = Math.min(least, Math.max(inTexts[text] || 0, onPages[page] || 0));
            }
            best = Math.max(best, least);
          }
          score += best;
          if (!best && (counts || !telling)) unmet += 1;
        }
        if (unmet > missing) continue;
        const here = found.get(page) || { page, score: 0, hits: [] };
        found.set(page, here);
        here.score = Math.max(here.score, score);
        if (anchor) here.hits.push({ title: index.titles[title] || '', anchor });
      }
    });
    return [...found.values()].sort((one, other) => other.score - one.score);
  }

  Basinside.search = Object.freeze({ folded, find });
})(globalThis.Basinside = globalThis.Basinside || {});
