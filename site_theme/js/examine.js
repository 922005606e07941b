/* The page that examines a completion record. It shows what certify/examine.py would find, in
   words, and says each time that a page cannot vouch for the folder it came in. */
(function (Basinside) {
  'use strict';

  const RULES = 'examine'; // ids of the inline JSON; the container may name another trust list
  const TRUST = 'trust';
  const { make } = Basinside;

  /**
   * @param {string} code
   * @param {Finding['verdict']} verdict
   * @param {Record<string, string>} data
   * @returns {string}
   */
  function sentence(code, verdict, data) {
    const { say, hasPhrase } = Basinside;
    const parts = [say(`examine.${code}.${verdict}`, data)];
    if (data.reason) {
      // Most reasons mean the same wherever they come from; some need words of their own.
      const own = `examine.${code}.reason.${data.reason}`;
      parts.push(say(hasPhrase(own) ? own : `examine.reason.${data.reason}`, data));
    }
    return parts.join(' ');
  }

  /** @param {any} record @returns {HTMLElement} */
  function facts(record) {
    const { say } = Basinside;
    const subject = record.credentialSubject;
    const rows = [
      ['for', subject.identifier[0].identityHash],
      ['name', record.name],
      ['scope', subject.scope.title],
      ['procedures', subject.scope.procedures.map((/** @type {any} */ each) => each.title).join('; ')],
      ['level', say(`examine.level.${subject.level}`)],
      ['steps', (subject.steps || []).join(', ')],
      ['limits', (subject.limits || []).join(' ')],
      ['override', subject.override || ''],
      ['edition', subject.edition],
      ['from', record.validFrom.slice(0, 10)],
      ['until', record.validUntil.slice(0, 10)],
      ['by', record.issuer.name],
      ['id', record.id],
    ].filter(([, value]) => value);
    return make(
      'dl', { class: 'says' },
      ...rows.map(([key, value]) =>
        make('div', {}, make('dt', {}, say(`examine.says.${key}`)), make('dd', {}, value)))
    );
  }

  /**
   * Several pieces of evidence that stand alike are one line: a page never has them at hand.
   * @param {Finding[]} findings
   * @returns {Finding[]}
   */
  function together(findings) {
    const alike = findings.filter(({ code, verdict }) => code === 'evidence' && verdict === 'unknown');
    if (alike.length < 2) return findings;
    const several = Basinside.unknown('evidence-several', { n: String(alike.length) });
    return findings.flatMap((each) =>
      each === alike[0] ? [several] : alike.includes(each) ? [] : [each]);
  }

  /**
   * @param {Examination} found
   * @returns {Node[]}
   */
  function report({ findings, standing, signer, record }) {
    const { say } = Basinside;
    const rows = together(findings).map((/** @type {Finding} */ { code, verdict, data }) =>
      make(
        'li', { 'data-code': code, 'data-verdict': verdict },
        make('b', {}, say(`examine.verdict.${verdict}`)),
        make('span', {}, sentence(code, verdict, data))
      )
    );
    const nodes = [
      make('h2', { tabindex: -1, 'data-standing': standing }, say(`examine.standing.${standing}`)),
      make('p', {}, say(`examine.standing-means.${standing}`, { signer: signer || '' })),
      make('p', {}, make('b', {}, say('examine.folder'))),
    ];
    if (record) nodes.push(make('h3', {}, say('examine.says')), facts(record));
    nodes.push(make('h3', {}, say('examine.findings')), make('ul', { class: 'findings' }, ...rows));
    return nodes;
  }

  /** @param {HTMLElement} container */
  function start(container) {
    const { say } = Basinside;
    const rules = Basinside.inlineJson(RULES);
    if (!rules) throw new Error('no rules to examine by');
    const result = make('div', { class: 'report' });
    const told = make('p', { role: 'status', class: 'told' });

    /** @param {string} text */
    const tell = (text) => {
      result.replaceChildren();
      told.textContent = text;
    };

    if (!Basinside.digest.canCheck()) {
      container.replaceChildren(make('p', { class: 'notice' }, say('examine.cannot')));
      return;
    }
    // Read as strictly as the record: it is a file that somebody may have changed.
    const plainTrust = document.getElementById(container.dataset.from || TRUST)?.textContent || 'null';

    /** @param {string} typed @returns {string | null | undefined} undefined when it was refused */
    const wordsOf = (typed) => {
      if (typed.trim() === '') return null;
      const read = Basinside.trust.readWords(typed, rules.words);
      if (read.words !== undefined) return read.words;
      tell(read.stray === undefined
        ? say('examine.words-count', { count: read.count })
        : say('examine.words-stray', { word: read.stray }));
      return undefined;
    };

    /** @param {{text: string, words: string, day: string}} given */
    const examine = async ({ text, words: typed, day }) => {
      if (text.trim() === '') return tell(say('examine.nothing'));
      const words = wordsOf(typed);
      if (words === undefined) return;
      let document;
      let trust;
      try {
        document = Basinside.readJson(text);
        trust = Basinside.readJson(plainTrust);
      } catch (error) {
        if (!(error instanceof Basinside.JsonTextError)) throw error;
        const { reason, line, column } = /** @type {any} */ (error);
        return tell(`${say(`examine.read.${reason}`)} ${say('examine.read-place', { line, column })}`);
      }
      if (document === null || typeof document !== 'object' || Array.isArray(document)) {
        return tell(say('examine.read.not-object'));
      }
      const on = /^\d{4}-\d{2}-\d{2}$/.test(day) ? day : null;
      const found = await Basinside.examineRecord(document, { trust, words, on, rules });
      told.textContent = '';
      result.replaceChildren(...report(found));
      result.querySelector('h2')?.focus();
    };

    /** @param {string} reason */
    const refuse = (reason) => tell(say(`examine.read.${reason}`));
    container.replaceChildren(
      make('div', { class: 'examine' },
        Basinside.examineForm(
          (/** @type {any} */ given) => {
            examine(given).catch((error) => {
              console.error('component failed: examine', error);
              tell(say('examine.failed'));
            });
          },
          refuse
        ),
        told, result)
    );
  }

  Basinside.component('examine', start);
})(globalThis.Basinside = globalThis.Basinside || {});
