'use client'
import { type ComponentType, type LazyExoticComponent, lazy } from 'react'
import { afterPaint } from './after-paint.ts'
import { type Asked, param } from './asked.ts'
import type { ScreenPath } from './screen-titles.ts'

type Rendered = ComponentType<Asked>

/** A screen whose code comes after the first paint; the server renders it whole. */
export interface LateScreen {
  readonly Screen: LazyExoticComponent<Rendered>
  /** Begins to fetch its code. */
  readonly begin: () => void
}

function late(load: () => Promise<Rendered>): LateScreen {
  let loading: Promise<{ readonly default: Rendered }> | undefined
  const once = () => {
    loading ??= afterPaint(load).then((Screen) => ({ default: Screen }))
    return loading
  }
  return { Screen: lazy(once), begin: () => void once().catch(() => undefined) }
}

/** All screens by their address. Only `import()` may stand here: what this file imports, every page's first load carries. */
export const screens: { readonly [Path in ScreenPath]: LateScreen } = {
  '/p/[project]': late(async () => {
    const { ProjectScreen } = await import('@/app/p/[project]/project-screen.tsx')
    return ProjectScreen
  }),
  '/p/[project]/account': late(async () => {
    const { AccountScreen } = await import('@/app/p/[project]/account/account-screen.tsx')
    return AccountScreen
  }),
  '/p/[project]/assemblies/[assembly]': late(async () => {
    const { AssemblyScreen } = await import(
      '@/app/p/[project]/assemblies/[assembly]/assembly-screen.tsx'
    )
    return (asked) => <AssemblyScreen id={param(asked, 'assembly')} />
  }),
  '/p/[project]/build-order': late(async () => {
    const { BuildOrderScreen } = await import(
      '@/app/p/[project]/build-order/build-order-screen.tsx'
    )
    return ({ search }) => <BuildOrderScreen assembly={search.assembly ?? null} />
  }),
  '/p/[project]/change-orders': late(async () => {
    const { OrderList } = await import('@/app/p/[project]/change-orders/order-list.tsx')
    return OrderList
  }),
  '/p/[project]/change-orders/[order]': late(async () => {
    const { OrderScreen } = await import('@/app/p/[project]/change-orders/[order]/order-screen.tsx')
    return (asked) => <OrderScreen id={param(asked, 'order')} />
  }),
  '/p/[project]/change-orders/new': late(async () => {
    const { OrderForm } = await import('@/app/p/[project]/change-orders/order-form.tsx')
    return () => <OrderForm order={null} />
  }),
  '/p/[project]/coating': late(async () => {
    const { CoatingScreen } = await import('@/app/p/[project]/coating/coating-screen.tsx')
    return CoatingScreen
  }),
  '/p/[project]/coating/[assembly]': late(async () => {
    const { StackScreen } = await import('@/app/p/[project]/coating/[assembly]/stack-screen.tsx')
    return (asked) => (
      <StackScreen
        id={param(asked, 'assembly')}
        stage={asked.search.stage ?? null}
        product={asked.search.product ?? null}
      />
    )
  }),
  '/p/[project]/colours/[colour]': late(async () => {
    const { ColourScreen } = await import('@/app/p/[project]/colours/[colour]/colour-screen.tsx')
    return (asked) => <ColourScreen id={param(asked, 'colour')} />
  }),
  '/p/[project]/decisions': late(async () => {
    const { DecisionList } = await import('@/app/p/[project]/decisions/decision-list.tsx')
    return DecisionList
  }),
  '/p/[project]/decisions/[decision]': late(async () => {
    const { DecisionScreen } = await import(
      '@/app/p/[project]/decisions/[decision]/decision-screen.tsx'
    )
    return (asked) => <DecisionScreen id={param(asked, 'decision')} />
  }),
  '/p/[project]/decisions/new': late(async () => {
    const { AskForm } = await import('@/app/p/[project]/decisions/new/ask-form.tsx')
    return AskForm
  }),
  '/p/[project]/handovers': late(async () => {
    const { HandoverList } = await import('@/app/p/[project]/handovers/handover-list.tsx')
    return HandoverList
  }),
  '/p/[project]/handovers/[handover]': late(async () => {
    const { HandoverScreen } = await import(
      '@/app/p/[project]/handovers/[handover]/handover-screen.tsx'
    )
    return (asked) => <HandoverScreen id={param(asked, 'handover')} />
  }),
  '/p/[project]/handovers/new': late(async () => {
    const { PrepareForm } = await import('@/app/p/[project]/handovers/new/prepare-form.tsx')
    return ({ search }) => (
      <PrepareForm
        assemblies={search.assembly?.split(',') ?? []}
        to={search.to}
        stage={search.stage}
      />
    )
  }),
  '/p/[project]/journal': late(async () => {
    const { Journal } = await import('@/app/p/[project]/journal/journal.tsx')
    return Journal
  }),
  '/p/[project]/parts': late(async () => {
    const { PartList } = await import('@/app/p/[project]/parts/part-list.tsx')
    return PartList
  }),
  '/p/[project]/parts/[part]': late(async () => {
    const { PartScreen } = await import('@/app/p/[project]/parts/[part]/part-screen.tsx')
    return (asked) => <PartScreen id={param(asked, 'part')} />
  }),
  '/p/[project]/parts/new': late(async () => {
    const { WantForm } = await import('@/app/p/[project]/parts/new/want-form.tsx')
    return ({ search }) => <WantForm stage={search.stage} />
  }),
  '/p/[project]/people': late(async () => {
    const { PeopleScreen } = await import('@/app/p/[project]/people/people-screen.tsx')
    return PeopleScreen
  }),
  '/p/[project]/set-up': late(async () => {
    const { SetUpScreen } = await import('@/app/p/[project]/set-up/set-up-screen.tsx')
    return SetUpScreen
  }),
  '/p/[project]/set-up/import': late(async () => {
    const { ImportScreen } = await import('@/app/p/[project]/set-up/import/import-screen.tsx')
    return ImportScreen
  }),
  '/p/[project]/set-up/library': late(async () => {
    const { LibraryScreen } = await import('@/app/p/[project]/set-up/library/library-screen.tsx')
    return LibraryScreen
  }),
  '/p/[project]/set-up/stages/[stage]': late(async () => {
    const { StageSetUp } = await import('@/app/p/[project]/set-up/stages/[stage]/stage-set-up.tsx')
    return (asked) => <StageSetUp id={param(asked, 'stage')} />
  }),
  '/p/[project]/stages/[stage]': late(async () => {
    const { StageScreen } = await import('@/app/p/[project]/stages/[stage]/stage-screen.tsx')
    return (asked) => <StageScreen id={param(asked, 'stage')} />
  }),
  '/p/[project]/stages/[stage]/job-card': late(async () => {
    const { JobCard } = await import('@/app/p/[project]/stages/[stage]/job-card/job-card.tsx')
    return (asked) => <JobCard id={param(asked, 'stage')} />
  }),
  '/p/[project]/tags': late(async () => {
    const { TagsScreen } = await import('@/app/p/[project]/tags/tags-screen.tsx')
    return TagsScreen
  }),
  '/p/[project]/windows': late(async () => {
    const { WindowsScreen } = await import('@/app/p/[project]/windows/windows-screen.tsx')
    return ({ search }) => (
      <WindowsScreen window={search.window} stage={search.stage} assembly={search.assembly} />
    )
  }),
  '/shops/[shop]': late(async () => {
    const { DaySheet } = await import('@/app/shops/[shop]/day-sheet.tsx')
    return DaySheet
  }),
  '/shops/[shop]/diary': late(async () => {
    const { DiaryScreen } = await import('@/app/shops/[shop]/diary/diary-screen.tsx')
    return ({ search }) => <DiaryScreen week={search.week} />
  }),
  '/shops/[shop]/people': late(async () => {
    const { ShopPeople } = await import('@/app/shops/[shop]/people/shop-people.tsx')
    return ShopPeople
  }),
  '/shops/[shop]/set-up': late(async () => {
    const { ShopSetUp } = await import('@/app/shops/[shop]/set-up/shop-set-up.tsx')
    return ShopSetUp
  }),
  '/scan': late(async () => {
    const { ScanPage } = await import('@/app/scan/scan-page.tsx')
    return () => <ScanPage asked={null} />
  }),
  '/sums': late(async () => {
    const { SumList } = await import('@/app/sums/sum-list.tsx')
    const { forStage } = await import('@/app/sums/for-stage.ts')
    return ({ search }) => <SumList stage={forStage(search)} />
  }),
  '/sums/[name]': late(async () => {
    const { SumScreen } = await import('@/app/sums/sum-screen.tsx')
    const { forStage } = await import('@/app/sums/for-stage.ts')
    return (asked) => <SumScreen name={param(asked, 'name')} stage={forStage(asked.search)} />
  }),
  '/t/[code]': late(async () => {
    const { ScanPage } = await import('@/app/scan/scan-page.tsx')
    return (asked) => <ScanPage asked={param(asked, 'code')} />
  }),
  '/unsent': late(async () => {
    const { UnsentScreen } = await import('@/app/unsent/unsent-screen.tsx')
    return UnsentScreen
  }),
}
