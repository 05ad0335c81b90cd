import { strToU8, zipSync } from 'fflate';
import { weldExactly } from '../weld.ts';
import type { PlainMesh } from '../write-stl.ts';
import { CORE } from './read-model.ts';

const CONTENT_TYPES = `<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
 <Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
 <Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
</Types>
`;
const RELATIONS = `<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
 <Relationship Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel" Target="/3D/3dmodel.model"/>
</Relationships>
`;

/** Local time without a zone, the earliest that a ZIP file can hold: equal solids give equal files, whenever and wherever. */
const NO_TIME = '1980-01-01T00:00:00';

// Control characters other than tab and line ends cannot stand in XML at all.
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out.
const NOT_IN_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;
const coded: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const inXml = (text: string): string => text.replace(NOT_IN_XML, ' ').replace(/[&<>"]/g, (letter) => coded[letter]!);

/**
 * A 3MF package (Core Specification 1.3) with one object, in millimetres. Vertices at the same place become one, as the
 * specification asks of a closed mesh.
 * @param title name of the part, for the object and the title of the model
 */
export function write3mf({ vertices, triangles }: PlainMesh, title: string): Uint8Array {
  const mesh = weldExactly({ vertices: Float64Array.from(vertices), triangles });
  const lines: string[] = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<model unit="millimeter" xml:lang="en" xmlns="${CORE}">`,
    ` <metadata name="Title">${inXml(title)}</metadata>`,
    ' <metadata name="Application">Waywright</metadata>',
    ' <resources>',
    `  <object id="1" type="model" name="${inXml(title)}">`,
    '   <mesh>',
    '    <vertices>',
  ];
  for (let i = 0; i < mesh.vertices.length; i += 3) {
    const [x, y, z] = [mesh.vertices[i]!, mesh.vertices[i + 1]!, mesh.vertices[i + 2]!];
    lines.push(`     <vertex x="${x}" y="${y}" z="${z}"/>`);
  }
  lines.push('    </vertices>', '    <triangles>');
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const [a, b, c] = [mesh.triangles[i]!, mesh.triangles[i + 1]!, mesh.triangles[i + 2]!];
    lines.push(`     <triangle v1="${a}" v2="${b}" v3="${c}"/>`);
  }
  lines.push(
    '    </triangles>',
    '   </mesh>',
    '  </object>',
    ' </resources>',
    ' <build>',
    '  <item objectid="1"/>',
    ' </build>',
    '</model>',
    '',
  );
  return zipSync(
    {
      '[Content_Types].xml': strToU8(CONTENT_TYPES),
      '_rels/.rels': strToU8(RELATIONS),
      '3D/3dmodel.model': strToU8(lines.join('\n')),
    },
    { level: 6, mtime: NO_TIME },
  );
}
