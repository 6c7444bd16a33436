// Fills a form in with pdf-lib: node fill.mjs FORM.pdf VALUES.json FILLED.pdf
import { readFileSync, writeFileSync } from 'node:fs';
import { PDFDocument } from 'pdf-lib';

const [form, values, filled] = process.argv.slice(2);
const { texts, ticks } = JSON.parse(readFileSync(values, 'utf8'));
const document = await PDFDocument.load(readFileSync(form));
const fields = document.getForm();
for (const [name, text] of Object.entries(texts)) {
  fields.getTextField(name).setText(text);
}
for (const name of ticks) {
  fields.getCheckBox(name).check();
}
writeFileSync(filled, await document.save());
