import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { chainOutputSchema } from '../../src/main/cli/output/chain-output.ts';
import { checkOutputSchema } from '../../src/main/cli/output/check-output.ts';
import { holeOutputSchema } from '../../src/main/cli/output/hole-output.ts';
import { importOutputSchema } from '../../src/main/cli/output/import-output.ts';
import { partOutputSchema } from '../../src/main/cli/output/part-output.ts';
import { setupOutputSchema } from '../../src/main/cli/output/setup-output.ts';
import { speedOutputSchema } from '../../src/main/cli/output/speed-output.ts';
import { threadOutputSchema } from '../../src/main/cli/output/thread-output.ts';
import { buildDocumentSchema } from '../../src/shared/build/build-document.ts';

const schemas = {
  build: buildDocumentSchema,
  'check-output': checkOutputSchema,
  'part-output': partOutputSchema,
  'chain-output': chainOutputSchema,
  'import-output': importOutputSchema,
  'thread-output': threadOutputSchema,
  'hole-output': holeOutputSchema,
  'setup-output': setupOutputSchema,
  'speed-output': speedOutputSchema,
};

// `npm run -s schema` writes the files anew.
test.each(Object.entries(schemas))(
  'resources/schema/%s.schema.json is what the program goes by',
  async (name, schema) => {
    const text = `${JSON.stringify(z.toJSONSchema(schema, { io: 'input' }), undefined, 2)}\n`;
    const file = fileURLToPath(new URL(`../../resources/schema/${name}.schema.json`, import.meta.url));
    await expect(text).toMatchFileSnapshot(file);
  },
);

test('the schema of a build knows every field of every record', () => {
  const text = JSON.stringify(z.toJSONSchema(buildDocumentSchema, { io: 'input' }));
  for (const field of ['castingGrade', 'datum', 'measure', 'finding', 'quantity', 'issuedAt'])
    expect(text).toContain(`"${field}"`);
  expect(text).toContain('^dimension:');
});
