/** What a page says that no worker has: the worker takes it. */
export const TAKE_PAGE = 'TAKE_PAGE'
