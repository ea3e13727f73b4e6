/** Fewest characters of a password; the server asks for as many. */
export const SHORTEST_PASSWORD = 10
