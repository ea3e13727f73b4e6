/**
 * Every screen of projects, of shops and of this phone by its address, and what stands in the tab's title: the one list. Each has its `page.tsx`, which
 * the server renders, and its line in `screens.tsx`, from which server, phone and `/shell` take the same component.
 */
export const screenTitles = {
  '/p/[project]': 'Project',
  '/p/[project]/account': 'Account',
  '/p/[project]/assemblies/[assembly]': 'Assembly',
  '/p/[project]/build-order': 'Build order',
  '/p/[project]/change-orders': 'Change orders',
  '/p/[project]/change-orders/[order]': 'Change order',
  '/p/[project]/change-orders/new': 'A change order',
  '/p/[project]/coating': 'Coating record',
  '/p/[project]/coating/[assembly]': 'What lies on it',
  '/p/[project]/colours/[colour]': 'Colour',
  '/p/[project]/decisions': 'Decisions',
  '/p/[project]/decisions/[decision]': 'Decision',
  '/p/[project]/decisions/new': 'Ask for a decision',
  '/p/[project]/handovers': 'Handovers',
  '/p/[project]/handovers/[handover]': 'Handover',
  '/p/[project]/handovers/new': 'Prepare a handover',
  '/p/[project]/journal': 'Journal',
  '/p/[project]/parts': 'Parts',
  '/p/[project]/parts/[part]': 'Part',
  '/p/[project]/parts/new': 'A part',
  '/p/[project]/people': 'People',
  '/p/[project]/set-up': 'Project set-up',
  '/p/[project]/set-up/import': 'Import a build order',
  '/p/[project]/set-up/library': 'Stage library',
  '/p/[project]/set-up/stages/[stage]': 'Stage set-up',
  '/p/[project]/stages/[stage]': 'Stage',
  '/p/[project]/stages/[stage]/job-card': 'Job card',
  '/p/[project]/tags': 'Tags',
  '/p/[project]/windows': 'Slots and windows',
  '/shops/[shop]': 'Day sheet',
  '/shops/[shop]/diary': 'Shop diary',
  '/shops/[shop]/people': 'People of the shop',
  '/shops/[shop]/set-up': 'Shop set-up',
  '/scan': 'Scan a tag',
  '/sums': 'Bench sums',
  '/sums/[name]': 'A sum',
  '/t/[code]': 'A tag',
  '/unsent': 'Unsent',
} as const

/** Where a screen stands, as Next writes it. */
export type ScreenPath = keyof typeof screenTitles
