import { expect, type Page } from '@playwright/test'

/** Whoever sets an installation up, and their shop. */
export const MANAGER = {
  shop: 'Mill Race Coachworks',
  name: 'Nan Arkle',
  email: 'nan@millrace.example',
  password: 'spoon dolly slapper',
} as const

/** Sets an empty installation up by its first page, and lands where one is signed in. */
export async function setUpFirstShop(page: Page): Promise<void> {
  await page.goto('/')
  await expect(page).toHaveURL(/\/set-up$/)
  await page.getByLabel('Name of the shop').fill(MANAGER.shop)
  await page.getByLabel('Your name').fill(MANAGER.name)
  await page.getByLabel('Your e-mail address').fill(MANAGER.email)
  await page.getByLabel('A password').fill(MANAGER.password)
  await page.getByRole('button', { name: 'Create the shop and sign in' }).click()
  await expect(page.getByText('Begin a project')).toBeVisible()
}

/** Signs in by address and password, from wherever the sign-in page stands. */
export async function signIn(page: Page, email: string, password: string): Promise<void> {
  await page.getByLabel('E-mail address').fill(email)
  await page.getByLabel('Password').fill(password)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
}
