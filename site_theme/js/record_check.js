/* Examines a completion record in the page: the clauses, codes and reasons of certify/examine.py,
   in its order. No sentence is made here. What Python emits is in `rules`. */
(function (Basinside) {
  'use strict';

  const { holds, fails, unknown } = Basinside;
  const NEVER_KNOWN = ['who-sat', 'what-was-seen', 'when-signed', 'revoked'];

  /**
   * The UTC day of an RFC 3339 moment, or null when no calendar has it.
   * @param {string} text a moment that has the pattern of one
   * @returns {string | null}
   */
  function dayOf(text) {
    const [, day = '', time = '', zone = ''] = /^([^T]+)T(\d\d:\d\d:\d\d)[.\d]*(.+)$/.exec(text) || [];
    const local = new Date(`${day}T${time}Z`);
    if (Number.isNaN(local.getTime()) || local.toISOString().slice(0, 10) !== day) return null;
    if (day < '0001') return null;
    const [, sign, hours, minutes] = /^([+-])(\d\d):(\d\d)$/.exec(zone) || [];
    const ahead = (Number(hours || 0) * 60 + Number(minutes || 0)) * (sign === '-' ? -1 : 1);
    const utc = new Date(local.getTime() - ahead * 60000).toISOString();
    return /^\d{4}-/.test(utc) && utc >= '0001' ? utc.slice(0, 10) : null;
  }

  /** @param {string} text */
  function secondOf(text) {
    return Date.parse(text);
  }

  /**
   * @param {any} document
   * @param {Rules} rules
   * @returns {Finding}
   */
  function examineShape(document, rules) {
    /** @type {(reason: string, detail?: string) => Finding} */
    const failing = (reason, detail) => fails('shape', detail ? { reason, detail } : { reason });
    const given = document['@context'];
    if (!Basinside.sameValue(given === undefined ? null : given, rules.context)) {
      return failing('other-context');
    }
    const { hasShape, stranger } = Basinside.shape;
    if (!hasShape(rules.record, document)) return failing('not-a-record');
    const strange = stranger(rules.record, document, ['proof', '@context']);
    if (strange) return failing('unknown-member', strange);
    const moments = [document.validFrom, document.validUntil];
    if (document.proof) moments.push(document.proof.created);
    if (moments.some((each) => dayOf(each) === null)) return failing('no-such-day');
    if (secondOf(document.validUntil) < secondOf(document.validFrom)) {
      return failing('days-run-backwards');
    }
    return holds('shape');
  }

  /**
   * @param {any} document
   * @param {string} namespace
   * @returns {Promise<string>}
   */
  async function contentId(document, namespace) {
    const bare = Object.create(null);
    for (const key of Object.keys(document)) {
      if (key !== 'id' && key !== 'proof') bare[key] = document[key];
    }
    const { digest, uuid5 } = Basinside.digest;
    const name = Basinside.bytes.hex(await digest(Basinside.canonicalBytes(bare)));
    return 'urn:uuid:' + (await uuid5(namespace, name));
  }

  /**
   * @param {any} plain
   * @param {string | null} given
   * @param {Rules} rules
   * @returns {Promise<{trust: any, findings: Finding[]}>}
   */
  async function examineTrust(plain, given, rules) {
    if (plain === null) {
      const reason = 'no-trust-list';
      const codes = ['trust-list-signature', 'root-fingerprint'];
      return { trust: null, findings: codes.map((code) => unknown(code, { reason })) };
    }
    const { trust, finding } = await Basinside.trust.checkTrustList(plain, rules.trust);
    if (trust === null || finding.verdict !== 'holds') {
      const about = unknown('root-fingerprint', { reason: 'list-does-not-hold' });
      return { trust: null, findings: [finding, about] };
    }
    const words = await Basinside.trust.fingerprint(trust.root.did, rules.words);
    if (given === null) {
      const about = unknown('root-fingerprint', { reason: 'not-given', words });
      return { trust, findings: [finding, about] };
    }
    if (given !== words) {
      const about = fails('root-fingerprint', { words, given });
      return { trust: null, findings: [finding, about] };
    }
    return { trust, findings: [finding, holds('root-fingerprint', { words })] };
  }

  /**
   * A list speaks for its own handbook and for no other.
   * @param {any} trust @param {any} entry @param {string} key @param {any} record
   * @returns {Finding}
   */
  function examineListing(trust, entry, key, record) {
    const code = 'key-listed';
    if (!entry) return fails(code, { reason: 'not-on-it', key });
    const listed = trust.handbook;
    const named = record ? record.credentialSubject.scope.handbook : listed;
    if (named !== listed) return fails(code, { reason: 'other-handbook', named, listed });
    return holds(code, { staff_code: entry.staff_code, role: entry.role });
  }

  /**
   * @param {any} record
   * @param {any} entry
   * @returns {Finding}
   */
  function examineSigner(record, entry) {
    const learner = record.credentialSubject.identifier[0].identityHash;
    const listed = entry.staff_code;
    if (record.issuer.name !== listed) {
      return fails('signer', { reason: 'other-name', named: record.issuer.name, listed });
    }
    if (learner === listed) return fails('signer', { reason: 'signed-for-self', listed });
    return holds('signer', { listed, learner });
  }

  /**
   * @param {any} record
   * @param {any} entry
   * @returns {Finding}
   */
  function examineKey(record, entry) {
    const from = dayOf(record.validFrom) || '';
    const created = dayOf(record.proof ? record.proof.created : record.validFrom) || '';
    const [signed = '', latest = ''] = [created, from].sort();
    const { lost, retired } = entry;
    const code = 'key-in-use';
    if (lost) return fails(code, { reason: 'lost', lost });
    if (signed < entry.from) return fails(code, { reason: 'not-yet', signed, counts_from: entry.from });
    if (retired && latest > retired) return fails(code, { reason: 'retired', signed: latest, retired });
    return holds(code, retired ? { signed, retired } : { signed });
  }

  /**
   * @param {any} record
   * @param {string | null} on
   * @returns {Finding}
   */
  function examineDate(record, on) {
    const days = {
      valid_from: dayOf(record.validFrom) || '',
      valid_until: dayOf(record.validUntil) || '',
    };
    if (on === null) return unknown('in-date', days);
    if (on < days.valid_from) return fails('in-date', { reason: 'not-yet', on, ...days });
    if (on > days.valid_until) return fails('in-date', { reason: 'ended', on, ...days });
    return holds('in-date', { on, ...days });
  }

  /**
   * @param {Finding[]} findings
   * @param {any} entry
   * @param {boolean} demo
   * @returns {string}
   */
  function standingOf(findings, entry, demo) {
    /** @type {(code: string) => string | undefined} */
    const said = (code) => findings.find((each) => each.code === code)?.verdict;
    const needed = ['signature', 'shape', 'issuer-holds-key'];
    const fallen = findings.some((each) => each.verdict === 'fails');
    if (fallen || needed.some((code) => said(code) !== 'holds')) return 'fails';
    if (demo) return 'demonstration';
    if (!entry) return 'unknown-signer';
    return said('root-fingerprint') === 'holds' ? 'confirmed' : 'according-to-folder';
  }

  /**
   * What can be said of a record.
   * @param {any} document a parsed JSON object
   * @param {{trust: any, words: string | null, on: string | null, rules: Rules}} given `trust` is the
   *   parsed trust list of this folder or null, `words` the six typed words as we write them
   * @returns {Promise<Examination>}
   */
  Basinside.examineRecord = async function (document, { trust: plain, words, on, rules }) {
    const signature = await Basinside.checkSignature(document);
    // A signature that is not right says nothing about whose it is, whatever key it names.
    const key = signature.verdict === 'holds' ? signature.data.key : undefined;
    const shape = examineShape(document, rules);
    const record = shape.verdict === 'holds' ? document : null;
    const findings = [signature, shape];
    if (record === null) findings.push(unknown('id-follows-content'));
    else {
      const same = record.id === (await contentId(record, rules.namespace));
      findings.push((same ? holds : fails)('id-follows-content'));
    }
    const { trust, findings: about } = await examineTrust(plain, words, rules);
    if (record === null || key === undefined) findings.push(unknown('issuer-holds-key'));
    else if (record.issuer.id === key) findings.push(holds('issuer-holds-key', { key }));
    else findings.push(fails('issuer-holds-key', { issuer: record.issuer.id, key }));
    findings.push(...about);
    const known = trust !== null && key !== undefined;
    const entry = known
      ? (trust.signers || []).find((/** @type {any} */ each) => each.did === key)
      : undefined;
    findings.push(known ? examineListing(trust, entry, key, record) : unknown('key-listed'));
    if (entry && record) findings.push(examineSigner(record, entry), examineKey(record, entry));
    const demo = Boolean(entry && entry.demo) || Boolean(trust && trust.demo);
    if (demo) findings.push(unknown('demonstration-key'));
    if (record) {
      findings.push(examineDate(record, on));
      for (const each of record.evidence) {
        findings.push(unknown('evidence', { digest: each.evidenceDigest }));
      }
    }
    findings.push(...NEVER_KNOWN.map((code) => unknown(code)));
    const standing = standingOf(findings, entry, demo);
    return { findings, standing, signer: entry ? entry.staff_code : null, record };
  };
})(globalThis.Basinside = globalThis.Basinside || {});
