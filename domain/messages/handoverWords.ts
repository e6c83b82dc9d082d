/**
 * The words of the sheet that stays with the people who live there: plain, one page. What to do about gas, CO and a bang is
 * the usual caution (common practice, no single source). French and Spanish await a native reader.
 */
import type { MessageLanguage } from './messageKinds.ts';

export type HandoverWords = {
  readonly title: string;
  readonly danger: string;
  readonly lockout: string;
  readonly settings: string;
  readonly appliance: string;
  readonly serial: string;
  readonly startedOn: string;
  readonly pressureCold: string;
  readonly pressureHot: string;
  readonly pressureAdvice: string;
  readonly supply: string;
  readonly coldest: string;
  readonly mildest: string;
  /** `{outdoor}`, `{supply}`. */
  readonly atOutdoor: string;
  readonly offAbove: string;
  readonly storedWater: string;
  readonly tapWater: string;
  readonly service: string;
  readonly serviceDue: string;
  readonly serviceLatest: string;
  readonly serviceUnknown: string;
  readonly call: string;
  readonly manual: string;
};

export const HANDOVER_WORDS: Readonly<Record<MessageLanguage, HandoverWords>> = {
  en: {
    title: 'Your heating: what to know',
    danger: 'Gas smell or carbon monoxide alarm',
    lockout: 'After a bang, or when it stops again and again: do not reset it. Switch the boiler off and call us.',
    settings: 'How it is set',
    appliance: 'Boiler',
    serial: 'Serial number',
    startedOn: 'Started up on',
    pressureCold: 'Pressure to look for, cold',
    pressureHot: 'Pressure when it was hot',
    pressureAdvice: 'If the pressure keeps falling, or rises much above this, call us.',
    supply: 'Water to the heating',
    coldest: 'On the coldest days',
    mildest: 'On mild days',
    atOutdoor: '{supply} when it is {outdoor} outside',
    offAbove: 'Heating off above',
    storedWater: 'Hot water store',
    tapWater: 'Hot water at the tap',
    service: 'Service',
    serviceDue: 'Next service due',
    serviceLatest: 'Latest day',
    serviceUnknown: 'Ask us when the next service is due.',
    call: 'Who to call',
    manual: 'The maker’s manual is with the boiler and comes first. Keep air openings and the flue outside free.',
  },
  fr: {
    title: 'Votre chauffage : l’essentiel',
    danger: 'Odeur de gaz ou alarme de monoxyde de carbone',
    lockout:
      'Après une détonation, ou si l’appareil s’arrête à répétition : ne le réarmez pas. Éteignez la chaudière et appelez-nous.',
    settings: 'Réglages',
    appliance: 'Chaudière',
    serial: 'Numéro de série',
    startedOn: 'Mise en service le',
    pressureCold: 'Pression à vérifier, à froid',
    pressureHot: 'Pression relevée à chaud',
    pressureAdvice: 'Si la pression baisse sans cesse ou dépasse nettement cette valeur, appelez-nous.',
    supply: 'Eau de départ du chauffage',
    coldest: 'Par grand froid',
    mildest: 'Par temps doux',
    atOutdoor: '{supply} quand il fait {outdoor} dehors',
    offAbove: 'Chauffage arrêté au-dessus de',
    storedWater: 'Ballon d’eau chaude',
    tapWater: 'Eau chaude au robinet',
    service: 'Entretien',
    serviceDue: 'Prochain entretien',
    serviceLatest: 'Date limite',
    serviceUnknown: 'Demandez-nous la date du prochain entretien.',
    call: 'Qui appeler',
    manual:
      'La notice du fabricant se trouve près de la chaudière et prévaut. Gardez libres les prises d’air et le conduit extérieur.',
  },
  es: {
    title: 'Su calefacción: lo esencial',
    danger: 'Olor a gas o alarma de monóxido de carbono',
    lockout: 'Después de una explosión, o si se para una y otra vez: no la rearme. Apague la caldera y llámenos.',
    settings: 'Cómo está ajustada',
    appliance: 'Caldera',
    serial: 'Número de serie',
    startedOn: 'Puesta en marcha el',
    pressureCold: 'Presión que debe marcar en frío',
    pressureHot: 'Presión medida en caliente',
    pressureAdvice: 'Si la presión baja continuamente o sube mucho por encima, llámenos.',
    supply: 'Agua de impulsión',
    coldest: 'En los días más fríos',
    mildest: 'En los días templados',
    atOutdoor: '{supply} con {outdoor} fuera',
    offAbove: 'Calefacción apagada por encima de',
    storedWater: 'Depósito de agua caliente',
    tapWater: 'Agua caliente en el grifo',
    service: 'Mantenimiento',
    serviceDue: 'Próxima revisión',
    serviceLatest: 'Último día',
    serviceUnknown: 'Pregúntenos cuándo toca la próxima revisión.',
    call: 'A quién llamar',
    manual:
      'El manual del fabricante está junto a la caldera y prevalece. Mantenga libres las tomas de aire y la salida de humos.',
  },
};
