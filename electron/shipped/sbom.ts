import { ComponentType, HashAlgorithm } from '@cyclonedx/cyclonedx-library/Enums';
import {
  Bom,
  Component,
  HashDictionary,
  LicenseExpression,
  LicenseRepository,
  Property,
  PropertyRepository,
} from '@cyclonedx/cyclonedx-library/Models';
import { JSON as AsJson, JsonSerializer } from '@cyclonedx/cyclonedx-library/Serialize';
import { Spec1dot6 } from '@cyclonedx/cyclonedx-library/Spec';
import type { ShippedPackage } from './shippedPackages.ts';

/**
 * The bill of materials of what ships, as CycloneDX 1.6 in JSON (ECMA-424): every package with its package URL, licence and
 * SHA-512. The same packages give the same bytes: no moment and no number by chance stands in it.
 */
export function sbom(app: { readonly name: string; readonly version: string }, packages: readonly ShippedPackage[]) {
  const bom = new Bom();
  const whole = new Component(ComponentType.Application, app.name, { version: app.version, bomRef: app.name });
  bom.metadata.component = whole;
  for (const one of packages) {
    const component = asComponent(one);
    bom.components.add(component);
    whole.dependencies.add(component.bomRef);
  }
  return new JsonSerializer(new AsJson.Normalize.Factory(Spec1dot6)).serialize(bom, { sortLists: true, space: 1 });
}

function asComponent({ name, version, licence, integrity, parts }: ShippedPackage): Component {
  const [scope, short] = name.startsWith('@') ? name.split('/') : [undefined, name];
  const purl = `pkg:npm/${scope ? `${encodeURIComponent(scope)}/` : ''}${short}@${version}`;
  return new Component(ComponentType.Library, short ?? name, {
    ...(scope && { group: scope }),
    version,
    purl,
    bomRef: purl,
    licenses: new LicenseRepository(licence ? [new LicenseExpression(licence)] : []),
    hashes: new HashDictionary(integrity ? [[HashAlgorithm['SHA-512'], hexOf(integrity)]] : []),
    properties: new PropertyRepository(parts.map((part) => new Property('knowngood:part', part))),
  });
}

const hexOf = (integrity: string): string => Buffer.from(integrity.slice('sha512-'.length), 'base64').toString('hex');
