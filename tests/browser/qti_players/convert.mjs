// Turns QTI 2.2 items into QTI 3: node convert.mjs FOLDER; each x.xml gets an x.qti3.xml beside it.
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { convertQti2toQti3 } from '@citolab/qti-convert/qti-convert-node';

const folder = process.argv[2];
for (const name of readdirSync(folder).filter((one) => one.endsWith('.xml'))) {
  const text = await convertQti2toQti3(readFileSync(join(folder, name), 'utf-8'));
  writeFileSync(join(folder, name.replace(/\.xml$/, '.qti3.xml')), text);
}
