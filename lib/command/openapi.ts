import * as z from 'zod/mini'
import type { CommandName } from '../record/command-names.ts'
import { Entity } from '../record/entity.ts'
import { CODE_HEADER, PERSON_HEADER } from './person-header.ts'
import { projectCommands } from './registry.ts'
import { shopCommands } from './set-up-commands.ts'

interface Described {
  readonly name: CommandName
  readonly input: z.ZodMiniType
}

/** What JSON schema can't say (a check by a function) is left out: the server says it in words. */
const schemaOf = (schema: z.ZodMiniType) => z.toJSONSchema(schema, { unrepresentable: 'any' })

/** One command's body: its name and its own input. */
const bodyOf = ({ name, input }: Described) => ({
  type: 'object',
  required: ['name', 'input', 'key', 'happenedAt'],
  additionalProperties: false,
  properties: {
    name: { const: name },
    input: schemaOf(input),
    key: { type: 'string', description: 'A UUID version 7; the same key again changes nothing.' },
    happenedAt: { type: 'string', format: 'date-time', description: 'When it happened, in UTC.' },
    expected: {
      type: 'object',
      additionalProperties: { type: 'integer' },
      description: 'The version of each record that the person was looking at.',
    },
  },
})

const answers = {
  200: 'Done: what changed, as this person may see it.',
  400: 'The input is wrong; each issue names its field.',
  401: 'Nobody is signed in.',
  403: 'This person may not; or `needs` says what a shop’s phone must ask first.',
  404: 'Something named is not there, or not for this person.',
  409: 'Refused: each condition says what is unmet, who can clear it and how.',
  422: 'The key belongs to another command.',
  429: 'Too often.',
}

const read = (
  summary: string,
  ...parameters: { name: string; in: string; required: boolean }[]
) => ({
  get: {
    summary,
    parameters: parameters.map((parameter) => ({ ...parameter, schema: { type: 'string' } })),
    responses: {
      200: { description: 'As this person may see it.' },
      401: { description: answers[401] },
    },
  },
})
const inPath = (name: string) => ({ name, in: 'path', required: true })
const inHeader = (name: string, description: string) => ({
  name,
  in: 'header',
  required: false,
  description,
  schema: { type: 'string' },
})
const inQuery = (name: string, required = false) => ({ name, in: 'query', required })

/** The HTTP API as an OpenAPI 3.1 document, made from the registry: a new command is in it by itself. */
export function openApi(version: string) {
  const commands: Described[] = [...Object.values(projectCommands), ...Object.values(shopCommands)]
  const id = inPath('id')
  return {
    openapi: '3.1.0',
    info: { title: 'Fettleyard', version },
    paths: {
      '/api/commands': {
        post: {
          summary: 'Carry out a command: the one way to change a record.',
          parameters: [
            inHeader(
              PERSON_HEADER,
              'Whose press it is. On a shop’s phone: the hand who works there.',
            ),
            inHeader(
              CODE_HEADER,
              'On a shop’s phone, with a signature: the hand’s own code. Kept nowhere.',
            ),
          ],
          requestBody: {
            required: true,
            content: { 'application/json': { schema: { oneOf: commands.map(bodyOf) } } },
          },
          responses: Object.fromEntries(
            Object.entries(answers).map(([status, description]) => [status, { description }]),
          ),
        },
      },
      '/api/me': read('Who is signed in, and where they belong.'),
      '/api/projects': read('The projects of who is signed in.'),
      '/api/projects/{id}': read('A project.', id),
      '/api/projects/{id}/changes': read(
        'What changed since a version.',
        id,
        inQuery('after', true),
      ),
      '/api/projects/{id}/as-of': read(
        'A project as it stood at a moment.',
        id,
        inQuery('at', true),
      ),
      '/api/projects/{id}/journal': read(
        'Who did what, newest first.',
        id,
        ...['before', 'limit', 'person', 'command', 'entity'].map((name) => inQuery(name)),
      ),
      '/api/projects/{id}/build-order.csv': read('The build order as a sheet.', id),
      '/api/projects/{id}/files/{sha256}': read('A photo or paper.', id, inPath('sha256')),
      '/api/shops/{id}': read('A shop book, to its own people.', id),
      '/api/shops/{id}/changes': read(
        'What changed in it since a version.',
        id,
        inQuery('after', true),
      ),
      '/api/shops/{id}/day-sheet': read('A shop’s book and its projects.', id),
      '/api/device': read('The shop’s phone that asks, and who can work at it.'),
      '/api/shops/{id}/devices': read('A shop’s phones, to its managers.', id),
      '/api/health': read('Whether the server serves.'),
    },
    components: { schemas: { Entity: schemaOf(Entity) } },
  }
}
