import type { EpochMs } from '../../time.ts';
import { facts as factTable, says } from '../blocks.ts';
import type { Section, Sheet } from '../content.ts';
import type { CommonFacts, SignatureFacts } from '../facts.ts';
import { type Format, formatFor, unbroken } from '../format.ts';
import type { Setting } from '../setting.ts';
import { sheet, signing } from '../sheet.ts';

/** Who did, checked or accepted it. Verifying (did the tool finish without errors) and accepting are two things. */
export type CertifiedBy = {
  readonly name: string;
  readonly title: string;
  /** Absent where the moment was not recorded. */
  readonly at?: EpochMs;
  readonly place: string;
  readonly contact: string;
  readonly signature?: SignatureFacts;
};

/**
 * Fields of NIST SP 800-88 Rev. 2, sec. 4.6 (and the destination of its sample form). Moving, imaging or deleting
 * files is none of the three methods, so there is no certificate for them.
 */
export type SanitisationFacts = CommonFacts & {
  readonly medium: {
    readonly what: string;
    readonly maker: string;
    readonly model: string;
    readonly serial: string;
    readonly property?: string;
    readonly type: string;
    readonly source: string;
    readonly category?: string;
    readonly destination?: string;
  };
  readonly method: 'clear' | 'purge' | 'destroy';
  readonly technique: string;
  /** Name and version; for destruction by hand or machine, that tool. */
  readonly tool: string;
  /** `withoutErrors` is absent where it was not recorded. */
  readonly verification: { readonly how: string; readonly withoutErrors?: boolean };
  readonly doneBy: CertifiedBy;
  readonly verifiedBy: CertifiedBy;
  readonly validatedBy?: CertifiedBy;
  readonly word?: string;
};

/** The certificate that a medium was sanitised, by the fields of `SanitisationFacts`, laid out without drawing. */
export function sanitisationCertificate(facts: SanitisationFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds['media-sanitisation-certificate'];
  const { medium, method, verification } = facts;
  return sheet('media-sanitisation-certificate', facts, setting, format, {
    lead: format.say(words.lead, {
      medium: medium.what,
      method: words.methods[method],
      verified: verified(verification, words),
    }),
    body: [
      {
        label: words.carrier,
        blocks: factTable(
          [words.maker, medium.maker],
          [words.model, medium.model],
          [words.serial, medium.serial],
          [words.property, medium.property],
          [words.type, medium.type],
          [words.source, medium.source],
          [words.category, medium.category],
          [words.destination, medium.destination],
        ),
      },
      {
        label: words.method,
        blocks: [
          ...says(words.methodText[method]),
          ...factTable(
            [words.methodName, words.methods[method]],
            [words.technique, facts.technique],
            [words.tool, facts.tool],
            [words.verification, verification.how],
          ),
        ],
      },
      { label: words.word, blocks: says(facts.word) },
      person(words.did, facts.doneBy, words.signedDone, setting, format),
      person(words.verifiedBy, facts.verifiedBy, words.signedVerified, setting, format),
      ...(facts.validatedBy
        ? [person(words.validatedBy, facts.validatedBy, words.signedValidated, setting, format)]
        : []),
    ],
  });
}

/** What is recorded of the check, and no more. */
function verified(
  { withoutErrors }: SanitisationFacts['verification'],
  words: Setting['words']['kinds']['media-sanitisation-certificate'],
): string {
  if (withoutErrors === undefined) return words.verifiedOpen;
  return withoutErrors ? words.verifiedYes : words.verifiedNo;
}

function person(label: string, by: CertifiedBy, signed: string, setting: Setting, format: Format): Section {
  return {
    label,
    blocks: [
      ...says([
        { text: by.name, strong: true },
        {
          text: `, ${[by.title, by.at === undefined ? null : format.dayTime(by.at), by.place, unbroken(by.contact)].filter((text) => text !== null).join(', ')}`,
        },
      ]),
      signing(by.signature, signed, setting, format),
    ],
  };
}
