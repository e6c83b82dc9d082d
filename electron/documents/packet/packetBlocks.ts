/** The whole packet as content, in reading order. */
import type { Block } from '../page/blocks.ts';
import type { PacketView } from './packetView.ts';
import type { PagePhoto } from './photoForPdf.ts';
import { amendmentSection } from './sections/amendmentSection.ts';
import { applianceSection } from './sections/applianceSection.ts';
import { attentionSection } from './sections/attentionSection.ts';
import { closingSection } from './sections/closingSection.ts';
import { combustionSection } from './sections/combustionSection.ts';
import { evidenceSection } from './sections/evidenceSection.ts';
import { paperSection } from './sections/paperSection.ts';
import { peopleSection } from './sections/peopleSection.ts';
import { readingsSection } from './sections/readingsSection.ts';
import { registrationSection } from './sections/registrationSection.ts';
import { stepsSection } from './sections/stepsSection.ts';
import { titleSection } from './sections/titleSection.ts';

export function packetBlocks(view: PacketView, photos: ReadonlyMap<string, PagePhoto>): readonly Block[] {
  return [
    ...titleSection(view),
    ...amendmentSection(view),
    ...attentionSection(view),
    ...applianceSection(view),
    ...peopleSection(view),
    ...registrationSection(view),
    ...combustionSection(view),
    ...readingsSection(view),
    ...stepsSection(view),
    ...paperSection(view),
    ...evidenceSection(view, photos),
    ...closingSection(view),
  ];
}
