/* What an answer is for each kind of question: how it begins, whether it is whole, what it is worth
   and what of it is written to a file. Values in, values out. */
(function (Basinside) {
  'use strict';

  /**
   * @typedef {{key: string, holes?: Record<string, string | number>}} Missing
   * @typedef {object} Kind
   * @property {(item: Item) => number[]} mixed authored positions as they are shown at first
   * @property {(item: Item, answer: ItemAnswer) => Missing | null} missing what to say when the
   *   answer cannot be checked yet
   * @property {(item: Item, answer: ItemAnswer) => PlanAnswer} plan the answer as its plan counts
   * @property {(item: Item, found: any) => boolean} fits whether a kept answer can be one
   * @property {(item: Item, answer: ItemAnswer) => Record<string, unknown>} filed the answer as the
   *   attempt file holds it
   */

  const upTo = (/** @type {number} */ count) => Array.from({ length: count }, (_, n) => n);

  /** @param {unknown} found @param {number} count @returns {boolean} */
  function isOrder(found, count) {
    return Array.isArray(found) && found.length === count && upTo(count).every((p) => found.includes(p));
  }

  /** @param {unknown} found @param {number} below @returns {boolean} */
  function isRising(found, below) {
    return (
      Array.isArray(found) &&
      found.every((p, n) => Number.isInteger(p) && p < below && p > (n ? found[n - 1] : -1))
    );
  }

  const isEmpty = (/** @type {unknown} */ found) => Array.isArray(found) && !found.length;
  const authored = (/** @type {ItemAnswer} */ answer, /** @type {number[]} */ shown) =>
    shown.map((p) => answer.order[p] ?? -1);
  const chosenPlan = (/** @type {Item} */ _, /** @type {ItemAnswer} */ answer) => ({
    chosen: authored(answer, answer.chosen).sort((a, b) => a - b),
  });
  const chosenFile = (/** @type {Item} */ _, /** @type {ItemAnswer} */ answer) =>
    answer.chosen.length ? { order: answer.order, chosen: answer.chosen } : { order: answer.order };

  /**
   * Whether several options may be ticked.
   * @param {Item} item
   * @returns {boolean}
   */
  function takesMany(item) {
    return item.kind === 'multiple' || item.options.filter((each) => each.right).length > 1;
  }

  /** @type {Kind} */
  const options = {
    mixed: (item) => Basinside.shuffled(item.options.length),
    missing: (_, answer) => (answer.chosen.length ? null : { key: 'self-test.choose-first' }),
    plan: chosenPlan,
    fits: (item, { order, chosen, ordered, typed }) =>
      isOrder(order, item.options.length) && isRising(chosen, item.options.length) &&
      (takesMany(item) || chosen.length < 2) && isEmpty(ordered) && typed === '',
    filed: chosenFile,
  };

  /** @type {Kind} */
  const order = {
    // The first order shown is never a right one, so that leaving it alone is no answer.
    mixed: (item) => {
      for (;;) {
        const mixed = Basinside.shuffled(item.plan.options);
        if (!Basinside.marking.evaluate(item.plan, { order: mixed }).passed) return mixed;
      }
    },
    missing: (_, answer) => (answer.ordered.length ? null : { key: 'self-test.order-first' }),
    plan: (_, answer) => ({ order: authored(answer, answer.ordered) }),
    fits: (item, found) =>
      isOrder(found.order, item.plan.options) && isEmpty(found.chosen) && found.typed === '' &&
      (isEmpty(found.ordered) || isOrder(found.ordered, item.plan.options)),
    filed: (_, answer) =>
      answer.ordered.length ? { order: answer.order, ordered: answer.ordered } : { order: answer.order },
  };

  const reading = (/** @type {Item} */ item, /** @type {ItemAnswer} */ answer) =>
    Basinside.typedNumber.read(answer.typed, item.answer);

  /** @type {Kind} */
  const numeric = {
    mixed: () => [],
    missing: (item, answer) => {
      const read = reading(item, answer);
      return 'number' in read ? null : read;
    },
    plan: (item, answer) => {
      const read = reading(item, answer);
      return 'number' in read ? { number: read.number } : {};
    },
    fits: (_, { order: mixed, chosen, ordered, typed }) =>
      isEmpty(mixed) && isEmpty(chosen) && isEmpty(ordered) &&
      typeof typed === 'string' && typed.length <= Basinside.typedNumber.LONGEST,
    filed: (item, answer) => numeric.plan(item, answer),
  };

  /** @param {Item} item @returns {number} right sides of a match */
  const rightsOf = (item) => item.answer.rights.length;
  /** @param {Item} item @returns {number} left sides of a match */
  const leftsOf = (item) => item.answer.pairs.length;

  /** @param {Item} item @param {number[]} rights @returns {number[]} the same for each left side */
  function paired(item, rights) {
    const count = rightsOf(item);
    return upTo(leftsOf(item)).flatMap((left) => rights.map((right) => left * count + right));
  }

  /** @type {Kind} */
  const match = {
    mixed: (item) => paired(item, Basinside.shuffled(rightsOf(item))),
    missing: (item, answer) => {
      const open = leftsOf(item) - answer.chosen.length;
      return open ? { key: 'self-test.match-first', holes: { count: open } } : null;
    },
    plan: chosenPlan,
    fits: (item, { order: mixed, chosen, ordered, typed }) => {
      const count = rightsOf(item);
      if (!Array.isArray(mixed) || !isEmpty(ordered) || typed !== '') return false;
      const rights = mixed.slice(0, count);
      return (
        isOrder(rights, count) && mixed.length === count * leftsOf(item) &&
        paired(item, rights).every((p, n) => p === mixed[n]) && isRising(chosen, mixed.length) &&
        new Set(chosen.map((/** @type {number} */ p) => Math.floor(p / count))).size === chosen.length
      );
    },
    filed: chosenFile,
  };

  /** @type {Record<string, Kind>} */
  const kinds = { order, numeric, match };

  /** @param {Item} item @returns {string} which of the ways of answering an item takes */
  const nameOf = (item) => (Object.hasOwn(kinds, item.kind) ? item.kind : 'options');

  Basinside.answerKinds = Object.freeze({
    nameOf,
    of: (/** @type {Item} */ item) => kinds[nameOf(item)] || options,
    takesMany,
  });
})(globalThis.Basinside = globalThis.Basinside || {});
