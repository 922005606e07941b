/* Options to tick, then the reason for every one of them. */
(function (Basinside) {
  'use strict';

  const { make, prose } = Basinside;

  /** @param {{right: boolean, unsafe: boolean}} option @param {boolean} chosen */
  function verdict(option, chosen) {
    if (option.unsafe) return chosen ? 'self-test.unsafe-chosen' : 'self-test.unsafe-left';
    const kind = option.right ? 'right' : 'wrong';
    return `self-test.${kind}-${chosen ? 'chosen' : 'left'}`;
  }

  /**
   * What an item is answered with, or once it was checked what there is to say of the answer.
   * @typedef {{hint: string, reasons: string, inside: Node[]}} Answering
   *   `hint` says how to answer, `reasons` heads what is said afterwards
   * @typedef {{give: (given: {ordered?: number[], typed?: string}) => void,
   *   choose: (chosen: number[]) => void}} Deeds
   */

  /**
   * @param {Item} item @param {ItemAnswer} answer @param {Deeds} deeds
   * @returns {Answering}
   */
  function options(item, answer, deeds) {
    const { say } = Basinside;
    const many = Basinside.answerKinds.takesMany(item);
    /** @type {HTMLInputElement[]} */
    const boxes = [];
    const rows = answer.order.map((authored, shown) => {
      const option = /** @type {Item['options'][number]} */ (item.options[authored]);
      const chosen = answer.chosen.includes(shown);
      const box = make('input', {
        type: many ? 'checkbox' : 'radio', name: 'chosen', value: shown, disabled: answer.checked,
        change: () => deeds.choose(boxes.flatMap((each, n) => (each.checked ? [n] : []))),
      });
      box.checked = chosen;
      boxes.push(box);
      const row = make('li', {}, make('label', {}, box, make('span', {}, ...prose(option.text))));
      if (answer.checked) {
        row.append(
          make(
            'p',
            { class: 'because' },
            make('b', {}, say(verdict(option, chosen))), ' ',
            ...prose(option.because)
          )
        );
        row.dataset.verdict = option.right ? 'right' : 'wrong';
      }
      return row;
    });
    return {
      hint: say(many ? 'self-test.many' : 'self-test.one'),
      reasons: say('self-test.reasons'),
      inside: [make('ul', { class: 'picks' }, ...rows)],
    };
  }

  Basinside.answering = { options };
})(globalThis.Basinside = globalThis.Basinside || {});
