/** Whether a notice is about an appliance, as its owner reads it: that it is, or that the files cannot tell. */
import type { RecallDoubt } from '../recalls/recallMatch.ts';
import type { MessageLanguage } from './messageKinds.ts';

export function noticeApplies(
  language: MessageLanguage,
  appliance: { readonly name: string; readonly serial: string; readonly site: string },
  doubts: readonly RecallDoubt[],
): string {
  const words = doubts.length === 0 ? IS_MEANT[language] : MAY_BE_MEANT[language];
  return words
    .replace('{appliance}', appliance.name)
    .replace('{serial}', appliance.serial)
    .replace('{site}', appliance.site);
}

const IS_MEANT: Readonly<Record<MessageLanguage, string>> = {
  en: 'According to our files your {appliance}, serial number {serial}, at {site} is among the appliances it is about.',
  fr: 'D’après nos dossiers, votre {appliance}, numéro de série {serial}, {site}, fait partie des appareils concernés.',
  es: 'Según nuestros archivos, su {appliance}, número de serie {serial}, en {site}, está entre los aparatos afectados.',
};

const MAY_BE_MEANT: Readonly<Record<MessageLanguage, string>> = {
  en: 'Your {appliance} at {site} may be among the appliances it is about: our files cannot tell. It has to be looked at.',
  fr: 'Votre {appliance}, {site}, fait peut-être partie des appareils concernés : nos dossiers ne permettent pas de le dire. Il faut le vérifier sur place.',
  es: 'Su {appliance}, en {site}, puede estar entre los aparatos afectados: nuestros archivos no permiten saberlo. Hay que comprobarlo.',
};
