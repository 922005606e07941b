/* The cryptosuite ecdsa-jcs-2019 on P-256 (W3C Data Integrity ECDSA Cryptosuites 1.0, section 3.3):
   SHA-256 of the canonical options, then of the canonical document; ECDSA with SHA-256 over both.
   Clause for clause what certify/secure.py does. */
(function (Basinside) {
  'use strict';

  const SIGNATURE_BYTES = 64;

  /** @param {unknown} context */
  function asList(context) {
    return Array.isArray(context) ? context : [context === undefined ? null : context];
  }

  /**
   * Whether one @context begins with another, in order.
   * @param {unknown} whole
   * @param {unknown} start
   * @returns {boolean}
   */
  function startsWith(whole, start) {
    const first = asList(start);
    return Basinside.sameValue(asList(whole).slice(0, first.length), first);
  }

  /**
   * @param {Record<string, unknown>} whole
   * @param {string} left
   * @returns {Record<string, unknown>}
   */
  function without(whole, left) {
    const rest = Object.create(null);
    for (const key of Object.keys(whole)) if (key !== left) rest[key] = whole[key];
    return rest;
  }

  /**
   * The did:key and the point of a verification method `did:key:X#X`.
   * @param {string} method
   */
  function keyOfMethod(method) {
    const [did = '', ...rest] = method.split('#');
    const point = Basinside.digest.pointOf(did);
    if (rest.join('#') !== did.slice(8)) throw new Error('not-did-key');
    return { did, point };
  }

  /** @param {string} value */
  function signatureOf(value) {
    if (!value.startsWith('z')) throw new Error('not-base58btc');
    const signature = Basinside.bytes.fromBase58btc(value.slice(1));
    if (signature.length !== SIGNATURE_BYTES) throw new Error('wrong-length');
    return signature;
  }

  /**
   * Whether the arithmetic of a document's proof is right, and nothing more.
   * @param {any} document a parsed JSON object
   * @returns {Promise<Finding>}
   */
  Basinside.checkSignature = async function (document) {
    const { fails, unknown, holds } = Basinside;
    let proof = document.proof;
    if (Array.isArray(proof)) {
      if (proof.length !== 1) return unknown('signature', { reason: 'several-proofs' });
      proof = proof[0];
    }
    if (proof === null || typeof proof !== 'object' || Array.isArray(proof)) {
      return fails('signature', { reason: 'no-proof' });
    }
    if (proof.type !== 'DataIntegrityProof' || proof.cryptosuite !== 'ecdsa-jcs-2019') {
      return unknown('signature', { reason: 'other-cryptosuite' });
    }
    if (proof.proofPurpose !== 'assertionMethod') {
      return fails('signature', { reason: 'other-purpose' });
    }
    if (typeof proof.verificationMethod !== 'string' || typeof proof.proofValue !== 'string') {
      return fails('signature', { reason: 'incomplete-proof' });
    }
    let key;
    let signature;
    try {
      key = keyOfMethod(proof.verificationMethod);
      signature = signatureOf(proof.proofValue);
    } catch (error) {
      return fails('signature', { reason: /** @type {Error} */ (error).message });
    }
    const bare = without(document, 'proof');
    const options = without(proof, 'proofValue');
    let more = false;
    if ('@context' in options) {
      if (!startsWith(bare['@context'], options['@context'])) {
        return fails('signature', { reason: 'other-context' });
      }
      more = asList(bare['@context']).length > asList(options['@context']).length;
      bare['@context'] = options['@context'];
    }
    const { digest, verify } = Basinside.digest;
    const data = Basinside.bytes.joined(
      await digest(Basinside.canonicalBytes(options)),
      await digest(Basinside.canonicalBytes(bare))
    );
    if (!(await verify(key.point, signature, data))) {
      return fails('signature', { reason: 'altered-or-other-key', key: key.did });
    }
    // The suite lets contexts be put behind the signed ones; that is a change, and it is said.
    return holds('signature', more ? { key: key.did, reason: 'more-contexts' } : { key: key.did });
  };
})(globalThis.Basinside = globalThis.Basinside || {});
