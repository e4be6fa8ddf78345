import type { Block } from '../../../core/papers/content.ts';
import type { Slab } from '../flow.ts';
import { answerSlabs, choiceSlabs } from './answers.ts';
import { comparisonSlabs } from './comparison.ts';
import { listSlabs, paragraphSlabs } from './paragraph.ts';
import { rulerSlabs } from './ruler.ts';
import { signingSlabs } from './signing.ts';
import type { Site } from './site.ts';
import { amountSlabs, consentSlabs, factSlabs, tableSlabs } from './tables.ts';

/** What a block needs of the page, as stretches that are never split. */
export function blockSlabs(block: Block, site: Site): Slab[] {
  switch (block.block) {
    case 'paragraph':
      return paragraphSlabs(block, site);
    case 'list':
      return listSlabs(block, site);
    case 'facts':
      return factSlabs(block, site);
    case 'table':
      return tableSlabs(block, site);
    case 'amounts':
      return amountSlabs(block, site);
    case 'ruler':
      return rulerSlabs(block, site);
    case 'comparison':
      return comparisonSlabs(block, site);
    case 'consents':
      return consentSlabs(block, site);
    case 'answers':
      return answerSlabs(block, site);
    case 'choices':
      return choiceSlabs(block, site);
    case 'signature':
    case 'signing':
      return signingSlabs(block, site);
  }
}
