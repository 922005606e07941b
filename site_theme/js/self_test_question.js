/* One question on the page: what it is answered with, how sure one is, then what there is to say. */
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

  /**
   * What somebody would do with the answer: three levels, asked before it is checked, never counted.
   * @param {ItemAnswer} answer @param {(sure: Sure) => void} tell
   * @returns {HTMLElement}
   */
  function howSure(answer, tell) {
    const { say } = Basinside;
    const rows = /** @type {Sure[]} */ (['now', 'look', 'ask']).map((sure) => {
      const box = make('input', { type: 'radio', name: 'sure', value: sure, change: () => tell(sure) });
      box.checked = answer.sure === sure;
      return make('label', {}, box, make('span', {}, say(`self-test.sure-${sure}`)));
    });
    return make(
      'fieldset', { class: 'sure' }, make('legend', {}, say('self-test.sure')), ...rows
    );
  }

  /**
   * The form of a question. `heading` is what focus goes to when the question opens, `result` when
   * it was checked.
   * @param {Item} item
   * @param {ItemAnswer} answer
   * @param {{number: number, count: number}} place
   * @param {Deeds & {check: () => void, sure: (sure: Sure) => void}} deeds
   * @returns {{form: HTMLElement, heading: HTMLElement, result: HTMLElement | null,
   *   actions: HTMLElement}}
   */
  Basinside.questionForm = function (item, answer, place, deeds) {
    const { say } = Basinside;
    const hint = Basinside.freshId('hint');
    const answering = Basinside.answering[Basinside.answerKinds.nameOf(item)](item, answer, deeds);
    const standing = Basinside.selfTest.standing(item, answer);
    const heading = make('h2', { tabindex: -1 }, say('self-test.question', place));
    if (item.critical) heading.append(' ', make('span', { class: 'tag' }, say('self-test.critical')));

    const hinted = answering.hint && !answer.checked;
    const ask = make(
      'fieldset',
      { 'aria-describedby': hinted ? hint : false },
      make('legend', { class: 'stem' }, ...prose(item.stem)),
      hinted ? make('p', { id: hint, class: 'small' }, answering.hint) : '',
      ...answering.inside
    );
    const result = answer.checked
      ? make(
          'div',
          { class: 'result', tabindex: -1 },
          make('h3', {}, say(`self-test.result-${standing}`)),
          answer.sure === 'now' && standing !== 'right'
            ? make('p', {}, say('self-test.sure-wrong'))
            : '',
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
    form.append(ask, result ? happened(item) : howSure(answer, deeds.sure), actions);
    if (result) ask.querySelector('legend')?.replaceChildren(answering.reasons);
    return { form, heading, result, actions };
  };
})(globalThis.Basinside = globalThis.Basinside || {});
