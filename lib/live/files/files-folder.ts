/** Where a project's files are fetched and sent, each under its own SHA-256. */
export const filesFolder = (project: string): string => `/api/projects/${project}/files`
