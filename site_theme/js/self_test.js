/* The self-test of one topic: questions one at a time, a look over them, the end. */
(function (Basinside) {
  'use strict';

  const DATA = 'self-test'; // the id of the inline JSON when the container names none
  const { make } = Basinside;

  /** @param {HTMLElement} container */
  function start(container) {
    const { say, selfTest, pressable: button } = Basinside;
    const given = Basinside.inlineJson(container.dataset.from || DATA);
    /** @type {{topic: string, items: Item[]}} */
    const { topic, items } = given;
    if (!items.length) throw new Error('a self-test without questions');

    let sheet = /** @type {Sheet} */ (selfTest.fresh(items));
    let where = 'question';
    let since = performance.now();
    /** @type {Sheet | null} */
    let saved = null; // the sheet that was last saved to a file

    const line = make('div', {});
    const body = make('div', {});
    const told = make('p', { role: 'status', class: 'told' });
    const kept = make('p', { class: 'small' });
    const notice = make('p', { role: 'status', class: 'notice' });
    let owner = Basinside.staffCode.current();

    const draft = Basinside.selfTestDraft(topic, items, {
      adopt: (/** @type {Sheet} */ earlier) => {
        change(selfTest.merged(sheet, earlier));
        show('question', false);
        toNamed();
      },
      told: (/** @type {string} */ key, /** @type {string} */ code) => {
        const fine = key === 'self-test.kept';
        kept.textContent = fine ? say(key, { code }) : '';
        notice.textContent = fine ? '' : say(key, { code });
      },
    });
    const begun = () => sheet.answers.some(selfTest.begun);

    /** @param {Sheet} next */
    const change = (next) => {
      sheet = next;
      draft.keep(sheet);
    };

    const spendTime = () => {
      const now = performance.now();
      if (where === 'question') sheet = selfTest.spend(sheet, sheet.at, (now - since) / 1000);
      since = now;
    };

    /** @param {number} index */
    const go = (index) => {
      spendTime();
      change({ ...sheet, at: index });
      show('question', true);
    };

    const check = () => {
      const missing = selfTest.missing(items[sheet.at], sheet.answers[sheet.at]);
      if (missing) {
        told.textContent = say(missing.key, missing.holes);
        return;
      }
      spendTime();
      change(selfTest.withAnswer(sheet, sheet.at, { checked: true }));
      show('question', true);
    };

    /** @param {string} next */
    const turn = (next) => {
      spendTime();
      change(sheet);
      show(next, true);
    };

    const again = () => {
      change(selfTest.fresh(items));
      show('question', true);
    };

    /** @param {HTMLElement} place */
    const save = (place) => {
      const code = Basinside.staffCode.current();
      const today = Basinside.day(new Date());
      if (code === null) {
        place.replaceChildren(make('p', { role: 'status' }, say('self-test.code-first')));
        container.querySelector('.staff-code button')?.dispatchEvent(new MouseEvent('click'));
        return;
      }
      const page = Basinside.page();
      const text = Basinside.sheetText.attempt(page, topic, code, today, items, sheet);
      const name = `${page.handbook}-${topic}-${code.toLowerCase()}-${today}.attempt.json`;
      Basinside.saveFile.save(place, name, text);
      saved = sheet;
    };

    /** @param {Sheet} next */
    const answered = (next) => {
      change(next);
      told.textContent = '';
      showLine();
    };

    const question = () => {
      const index = sheet.at;
      const item = /** @type {Item} */ (items[index]);
      const answer = /** @type {Sheet['answers'][number]} */ (sheet.answers[index]);
      const made = Basinside.questionForm(
        item, answer, { number: index + 1, count: items.length },
        {
          choose: (/** @type {number[]} */ chosen) => answered(selfTest.choose(sheet, index, chosen)),
          give: (/** @type {any} */ given) => answered(selfTest.give(sheet, index, given)),
          sure: (/** @type {Sure} */ sure) => change(selfTest.give(sheet, index, { sure })),
          check,
        }
      );
      const last = index === items.length - 1;
      if (!answer.checked) {
        made.actions.append(make('button', { type: 'submit', class: 'first' }, say('self-test.check')));
      }
      if (!last) {
        made.actions.append(button(say('self-test.next'), () => go(index + 1), answer.checked));
      }
      if (index > 0) made.actions.append(button(say('self-test.previous'), () => go(index - 1)));
      made.actions.append(button(say('self-test.over'), () => turn('review'), last && answer.checked));
      return { page: made.form, heading: made.result || made.heading };
    };

    const around = () => ({
      items, sheet, go, save, again, finish: () => turn('end'), review: () => turn('review'),
    });
    const showLine = () => line.replaceChildren(Basinside.questionLine(around()));

    /** @param {string} next @param {boolean} focus */
    const show = (next, focus) => {
      where = next;
      const pages = {
        question,
        review: () => Basinside.selfTestReview(around()),
        end: () => Basinside.selfTestEnd(around()),
      };
      const { page, heading } = pages[/** @type {keyof typeof pages} */ (next)]();
      showLine();
      told.textContent = '';
      body.replaceChildren(page);
      if (focus) heading.focus();
    };

    const toNamed = () => {
      const index = items.findIndex((each) => '#' + each.item === location.hash);
      if (index >= 0 && index !== sheet.at) go(index);
    };

    const afresh = () => {
      sheet = selfTest.fresh(items);
      kept.textContent = '';
      draft.open(owner);
      show('question', false);
    };

    Basinside.staffCode.onChange((/** @type {string | null} */ code) => {
      // Answers given before a code was chosen are that person's; nobody inherits another's.
      const before = owner;
      owner = code;
      if (before !== null && before !== code) return afresh();
      draft.open(code);
      if (begun()) draft.keep(sheet);
    });

    container.replaceChildren(
      make('div', { class: 'self-test' }, Basinside.staffCode.build(afresh), notice, line, body, told, kept)
    );
    show('question', false);
    draft.open(owner);
    toNamed();

    window.addEventListener('hashchange', toNamed);
    document.addEventListener('visibilitychange', () => {
      if (document.hidden) {
        spendTime();
        draft.keep(sheet);
      } else since = performance.now();
    });
    window.addEventListener('beforeunload', (event) => {
      if (begun() && sheet !== saved && !draft.isKept(sheet)) event.preventDefault();
    });
  }

  Basinside.component('self-test', start);
})(globalThis.Basinside = globalThis.Basinside || {});
