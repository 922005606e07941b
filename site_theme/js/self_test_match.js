/* Left sides, each with a list to choose what belongs to it; then every pair with its reason. */
(function (Basinside) {
  'use strict';

  const { make, prose } = Basinside;

  /** The right side that was chosen for a left one, as an authored place, or undefined.
   * @param {Item} item @param {ItemAnswer} answer @param {number} left */
  function chosenFor(item, answer, left) {
    const count = item.answer.rights.length;
    const authored = answer.chosen.map((p) => answer.order[p] ?? -1);
    const found = authored.find((p) => Math.floor(p / count) === left);
    return found === undefined ? undefined : found % count;
  }

  /** @param {Item} item @param {ItemAnswer} answer @param {Deeds} deeds @returns {Node[]} */
  function controls(item, answer, deeds) {
    const { say } = Basinside;
    const { pairs, rights } = item.answer;
    const shownRights = answer.order.slice(0, rights.length);
    /** @type {HTMLSelectElement[]} */
    const boxes = [];
    const given = () =>
      boxes.flatMap((box, left) => (box.value === '' ? [] : [left * rights.length + Number(box.value)]));
    const rows = pairs.map(({ left }, n) => {
      const id = Basinside.freshId('match');
      const chosen = chosenFor(item, answer, n);
      const box = make(
        'select', { id, change: () => deeds.choose(given()) },
        make('option', { value: '' }, say('self-test.match-choose')),
        ...shownRights.map((authored, place) => {
          const option = make('option', { value: place }, ...prose(rights[authored]).map(said));
          option.selected = authored === chosen;
          return option;
        })
      );
      boxes.push(box);
      return make('li', {}, make('label', { for: id }, ...prose(left)), box);
    });
    return [make('ul', { class: 'match-lines' }, ...rows)];
  }

  /** @param {Node} node @returns {string} an option holds text and nothing else */
  const said = (node) => node.textContent || '';

  /** @param {Item} item @param {ItemAnswer} answer @returns {Node[]} */
  function reasons(item, answer) {
    const { say } = Basinside;
    const { pairs, rights, keys, wrong } = item.answer;
    const rows = pairs.map(({ left, right, because, mistakes }, n) => {
      const chosen = chosenFor(item, answer, n);
      const row = make(
        'li', { 'data-verdict': chosen === keys[n] ? 'right' : 'wrong' },
        make('p', {}, make('span', {}, ...prose(left), ': '), make('b', {}, ...prose(right)), '. ',
          ...prose(because))
      );
      if (chosen === undefined) return row;
      const known = mistakes[wrong[n]?.indexOf(chosen) ?? -1];
      row.append(
        make('p', {},
          ...(chosen === keys[n]
            ? [say('self-test.match-right')]
            : [make('b', {}, say('self-test.match-wrong')), ' ', ...prose(rights[chosen]), '. ']),
          ...(known ? [...prose(known.because), ' ', ...prose(known.belief)] : []))
      );
      return row;
    });
    return [make('ul', { class: 'matched' }, ...rows)];
  }

  /**
   * @param {Item} item @param {ItemAnswer} answer @param {Deeds} deeds
   * @returns {Answering}
   */
  Basinside.answering.match = (item, answer, deeds) => ({
    hint: Basinside.say('self-test.match'),
    reasons: Basinside.say('self-test.match-reasons'),
    inside: answer.checked ? reasons(item, answer) : controls(item, answer, deeds),
  });
})(globalThis.Basinside = globalThis.Basinside || {});
