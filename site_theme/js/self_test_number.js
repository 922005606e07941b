/* A number to be typed, echoed as it was understood; then how it comes about. */
(function (Basinside) {
  'use strict';

  const { make, prose } = Basinside;
  const QUIET_MS = 500; // after the last key, before the reading is said

  /** @param {Item} item @param {string} typed @returns {string} how it was read, or what is missing */
  function echo(item, typed) {
    const { say, typedNumber } = Basinside;
    const reading = typedNumber.read(typed, item.answer);
    if (!('number' in reading)) return say(reading.key, reading.holes);
    const read = typedNumber.shown(reading.number, item.answer);
    return say('self-test.number-echo', { typed: typed.trim(), read });
  }

  /** @param {Item} item @param {ItemAnswer} answer @param {Deeds} deeds @returns {Node[]} */
  function controls(item, answer, deeds) {
    const { say } = Basinside;
    const { unit, units } = item.answer;
    const told = make('p', { role: 'status', class: 'echo' }, answer.typed.trim() && echo(item, answer.typed));
    let quiet = 0;
    const field = make('input', {
      id: Basinside.freshId('number'), type: 'text', autocomplete: 'off', spellcheck: 'false',
      maxlength: Basinside.typedNumber.LONGEST, value: answer.typed,
      input: () => {
        deeds.give({ typed: field.value });
        clearTimeout(quiet);
        told.textContent = '';
        quiet = setTimeout(() => {
          if (field.value.trim()) told.textContent = echo(item, field.value);
        }, QUIET_MS);
      },
    });
    const other = Object.keys(units).length > 2;
    const help = make('p', { class: 'small', id: Basinside.freshId('help') },
      say(other ? 'self-test.number-help-unit' : 'self-test.number-help'));
    field.setAttribute('aria-describedby', help.id);
    const label = make('label', { for: field.id },
      unit[1] ? say('self-test.number-in', { unit: unit[1] }) : say('self-test.number'));
    const line = make('span', { class: 'number-line' }, field);
    if (unit[1]) line.append(make('span', { 'aria-hidden': 'true' }, unit[1]));
    return [make('div', { class: 'number-field' }, label, line, help, told)];
  }

  /** @param {Item} item @param {ItemAnswer} answer @returns {Node[]} */
  function reasons(item, answer) {
    const { say, typedNumber } = Basinside;
    const { right, accepted, because, mistakes, numbers } = item.answer;
    const reading = typedNumber.read(answer.typed, item.answer);
    const number = 'number' in reading ? reading.number : '';
    const wrong = Basinside.selfTest.standing(item, answer) !== 'right';
    const known = wrong ? mistakes.find((_, n) => typedNumber.beside(number, numbers[n]) === 0) : undefined;
    const mistake = known
      ? [make('p', { 'data-verdict': 'wrong' }, ...prose(known.because), ' ', ...prose(known.belief))]
      : [];
    return [
      make('p', {}, echo(item, answer.typed)),
      ...mistake,
      make('p', {}, make('b', {}, say('self-test.number-right'), ' ', ...prose(right), '.'), ' ', accepted),
      make('p', {}, ...prose(because)),
    ];
  }

  /**
   * @param {Item} item @param {ItemAnswer} answer @param {Deeds} deeds
   * @returns {Answering}
   */
  Basinside.answering.numeric = (item, answer, deeds) => ({
    hint: '',
    reasons: Basinside.say('self-test.number-reasons'),
    inside: answer.checked ? reasons(item, answer) : controls(item, answer, deeds),
  });
})(globalThis.Basinside = globalThis.Basinside || {});
