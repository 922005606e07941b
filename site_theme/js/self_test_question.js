/* One question on the page: options to tick, then the reason for every one of them. */
(function (Basinside) {
  'use strict';

  const { make, prose } = Basinside;

  /** @param {Item} item @returns {{href: string, text: string}[]} */
  function leads(item) {
    return item.lead ? [item.lead].flat() : [];
  }

  /** @param {Item} item @returns {HTMLElement | string} */
  Basinside.leadBack = function (item) {
    const links = leads(item).map(({ href, text }) => make('a', { href }, text));
    return links.length
      ? make('p', { class: 'inline-links' }, make('b', {}, Basinside.say('self-test.lead')), ...links)
      : '';
  };

  /** What was published that the question was built on. @param {Item} item */
  function happened(item) {
    const told = item.built_on;
    if (!told) return '';
    return make(
      'p', { class: 'happened' },
      make('b', {}, told.word), ' ', ...prose(told.says), ' ', make('small', {}, ...prose(told.source))
    );
  }

  /** @param {{right: boolean, unsafe: boolean}} option @param {boolean} chosen */
  function verdict(option, chosen) {
    if (option.unsafe) return chosen ? 'self-test.unsafe-chosen' : 'self-test.unsafe-left';
    const kind = option.right ? 'right' : 'wrong';
    return `self-test.${kind}-${chosen ? 'chosen' : 'left'}`;
  }

  /**
   * The form of a question. `heading` is what focus goes to when the question opens, `result` when
   * it was checked.
   * @param {Item} item
   * @param {ItemAnswer} answer
   * @param {{number: number, count: number}} place
   * @param {{changed: (chosen: number[]) => void, check: () => void}} deeds
   * @returns {{form: HTMLElement, heading: HTMLElement, result: HTMLElement | null,
   *   actions: HTMLElement}}
   */
  Basinside.questionForm = function (item, answer, place, deeds) {
    const { say } = Basinside;
    const many = Basinside.selfTest.takesMany(item);
    const hint = Basinside.freshId('hint');
    const heading = make('h2', { tabindex: -1 }, say('self-test.question', place));
    if (item.critical) heading.append(' ', make('span', { class: 'tag' }, say('self-test.critical')));

    /** @type {HTMLInputElement[]} */
    const boxes = [];
    const rows = answer.order.map((authored, shown) => {
      const option = /** @type {Item['options'][number]} */ (item.options[authored]);
      const chosen = answer.chosen.includes(shown);
      const box = make('input', {
        type: many ? 'checkbox' : 'radio', name: 'chosen', value: shown, disabled: answer.checked,
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
    const ask = make(
      'fieldset',
      {
        'aria-describedby': hint,
        change: () => deeds.changed(boxes.flatMap((box, n) => (box.checked ? [n] : []))),
      },
      make('legend', { class: 'stem' }, ...prose(item.stem)),
      make('p', { id: hint, class: 'small', hidden: answer.checked },
        say(many ? 'self-test.many' : 'self-test.one')),
      make('ul', { class: 'picks' }, ...rows)
    );
    const result = answer.checked
      ? make(
          'div',
          { class: 'result', tabindex: -1 },
          make('h3', {}, say(`self-test.result-${Basinside.selfTest.standing(item, answer)}`)),
          Basinside.leadBack(item)
        )
      : null;
    const actions = make('div', { class: 'actions' });
    const form = make('form', {
      class: 'question-now', id: item.item, novalidate: true,
      submit: (/** @type {Event} */ event) => {
        event.preventDefault();
        if (!answer.checked) deeds.check();
      },
    });
    form.append(heading);
    if (item.situation) form.append(make('p', { class: 'situation' }, ...prose(item.situation)));
    // The result stands before the options, so that its reader goes on to the reasons.
    if (result) form.append(make('p', { class: 'stem' }, ...prose(item.stem)), result);
    form.append(ask, result ? happened(item) : '', actions);
    if (result) ask.querySelector('legend')?.replaceChildren(say('self-test.reasons'));
    return { form, heading, result, actions };
  };
})(globalThis.Basinside = globalThis.Basinside || {});
