/** Texts made to be slow: each is a megabyte of what a careless pattern would go over again and again. */
export const MB = 1_000_000;
export const HARD: readonly (readonly [string, string])[] = [
  ['one line without end', 'a'.repeat(MB)],
  ['blanks', ' '.repeat(MB)],
  ['empty lines', '\n'.repeat(MB)],
  ['brackets that never close', '[{"a":'.repeat(MB / 6)],
  ['lines that begin JSON', '{"\n'.repeat(MB / 3)],
  ['lines that begin JSON and close it', '{}\n'.repeat(MB / 3)],
  ['a text in JSON without end', `{"a":"${'b'.repeat(MB)}`],
  ['handles', 'Handle 0x0001, DMI type 17, 40 bytes\n'.repeat(MB / 37)],
  [
    'memory records',
    'Handle 0x0001, DMI type 17, 40 bytes\nMemory Device\n\tSize: 8 GB\n\tLocator: A\n'.repeat(MB / 74),
  ],
  ['tools by turns', '# dmidecode 3.3\nsmartctl 7.3\nArchitecture: x\n00:00.0 VGA: x\n'.repeat(MB / 60)],
  [
    'drives',
    'smartctl 7.3\nDevice Model: X\nSMART overall-health self-assessment test result: PASSED\n'.repeat(MB / 86),
  ],
  ['listed drives', `{"blockdevices":[${'{"type":"disk","name":"sda","model":"X"},'.repeat(MB / 41)}{}]}`],
  ['card slots', 'Handle 0x0001, DMI type 9, 17 bytes\nSystem Slot Information\n\tDesignation: A\n'.repeat(MB / 77)],
  ['nodes', `machine\n    description: x\n${'  *-bank:0\n     size: 1GiB\n'.repeat(MB / 27)}`],
  [
    'nodes deeper and deeper',
    `machine\n    description: x\n${Array.from({ length: 290 }, (_, n) => `${' '.repeat(n)}*-bank\n`)
      .join('')
      .repeat(20)}`,
  ],
  ['attributes', `smartctl 7.3\nID# ATTRIBUTE_NAME\n${'  5 A PO--CK 100 100 010 - 0\n'.repeat(MB / 29)}`],
  ['digit groups', `smartctl 7.3\nPower On Hours: ${'1,000'.repeat(MB / 5)}\n`],
  ['colons', ':'.repeat(MB)],
];
