import { writeFileSync } from 'node:fs';
import { clubWorkbook } from './club-workbook.ts';

writeFileSync(new URL('club-stations.xlsx', import.meta.url), await clubWorkbook());
console.log('deploy/spreadsheets/club-stations.xlsx is written.');
