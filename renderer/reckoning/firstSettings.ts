import type { ShopSettings } from '../../core/job/shop.ts';

/** What a new shop starts with until it says otherwise: common practice, no source. */
export const firstSettings = (): Omit<
  ShopSettings,
  'name' | 'address' | 'phone' | 'currency' | 'paperSize' | 'tax' | 'perMinuteMinor' | 'findingFee'
> => ({
  locale: navigator.language,
  language: 'en',
  zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  warrantyMonths: { work: 6, part: 12 },
  open: [2, 3, 4, 5, 6].map((weekday) => ({ weekday, from: '09:00', to: '18:00' })),
  benches: ['bench 1'],
  rigs: ['rig-1'],
  rules: {
    triesBeforeHome: 3,
    questionValidHours: 72,
    keptDays: 90,
    storageFeeMinorPerDay: 200,
    storageFeeAfterDays: 30,
    standingLapsesDays: 365,
    processorLimitC: 85,
  },
  notCollectedText: '',
});
