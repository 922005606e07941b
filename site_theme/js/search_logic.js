/* Looking words up in the index that the generator wrote (render/search_index.py). Values in,
   values out. */
(function (Basinside) {
  'use strict';

  const WEIGHTS = 4;
  const WHOLE_WORD = 2; // a whole word counts twice its beginning
  const PAGE_NAME = 3; // a word of the page's own name
  const EVERYWHERE = 0.2; // a word of this share of all texts may be missing, as “the” may

  /**
   * @typedef {{pages: [string, string, string][], texts: any[][], terms: string[],
   *   postings: number[][], same: string[][][]}} Index
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

  /**
   * Text -> weight of every text that holds a word, or one that begins with it.
   * @param {Index} index @param {string} word
   * @returns {Map<number, number>}
   */
  function textsWith(index, word) {
    const found = new Map();
    for (let at = firstAt(index.terms, word); at < index.terms.length; at += 1) {
      const term = index.terms[at] || '';
      if (!term.startsWith(word)) break;
      let number = 0;
      for (const step of index.postings[at] || []) {
        number += step;
        const weight = (number % WEIGHTS) * (term === word ? WHOLE_WORD : 1);
        const text = Math.floor(number / WEIGHTS);
        found.set(text, Math.max(found.get(text) || 0, weight));
      }
    }
    return found;
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
    const names = index.pages.map(([, name]) => folded(name));
    const looked = new Map();
    const looking = (/** @type {string} */ word) => {
      if (!looked.has(word)) looked.set(word, textsWith(index, word));
      return looked.get(word);
    };
    const onPage = (/** @type {string} */ word, /** @type {number} */ page) =>
      (names[page] || []).some((each) => each.startsWith(word)) ? PAGE_NAME : 0;
    const usual = EVERYWHERE * index.texts.length;
    const asked = demands(index, words).map((phrases) => ({
      phrases,
      telling: !phrases.every((phrase) => phrase.every((word) => looking(word).size > usual)),
    }));
    const telling = asked.filter((each) => each.telling).length;
    if (missing >= telling && missing > 0) return [];
    /** @type {Map<number, Found>} */
    const found = new Map();
    index.texts.forEach(([title, ...places], text) => {
      for (const [page, anchor] of places) {
        let score = 0;
        let inText = false;
        let unmet = 0;
        for (const { phrases, telling: counts } of asked) {
          let best = 0;
          for (const phrase of phrases) {
            const weights = phrase.map((word) => {
              const weight = looking(word).get(text) || 0;
              if (weight) inText = true;
              return Math.max(weight, onPage(word, page));
            });
            if (weights.every(Boolean)) best = Math.max(best, Math.min(...weights));
          }
          score += best;
          if (!best && (counts || !telling)) unmet += 1;
        }
        if (unmet > missing || (!inText && anchor)) continue;
        const here = found.get(page) || { page, score: 0, hits: [] };
        found.set(page, here);
        here.score = Math.max(here.score, score);
        if (anchor) here.hits.push({ title, anchor });
      }
    });
    return [...found.values()].sort((one, other) => other.score - one.score);
  }

  Basinside.search = Object.freeze({ folded, find });
})(globalThis.Basinside = globalThis.Basinside || {});
