/** The tag by which the browser calls the service worker when there is signal again. */
export const SYNC_TAG = 'fettleyard-outbox'
