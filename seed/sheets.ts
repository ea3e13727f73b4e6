/** A one-page PDF with those lines, as a shop's scanned sheet would be (ISO 32000-1: five objects and their table). */
export function sheet(lines: readonly string[]): Uint8Array {
  const shown = lines.map((line, i) => {
    const text = line.replaceAll(/[^ -~]/g, '-').replaceAll(/[\\()]/g, '\\$&')
    return `/F1 ${i === 0 ? 18 : 11} Tf 1 0 0 1 56 ${770 - 30 * i} Tm (${text}) Tj`
  })
  const content = `BT ${shown.join(' ')} ET`
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 5 0 R /Resources << /Font << /F1 4 0 R >> >> >>',
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>',
    `<< /Length ${content.length} >>\nstream\n${content}\nendstream`,
  ]
  let text = '%PDF-1.4\n'
  const offsets = objects.map((object, i) => {
    const offset = text.length
    text += `${i + 1} 0 obj\n${object}\nendobj\n`
    return `${String(offset).padStart(10, '0')} 00000 n \n`
  })
  const table = `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${offsets.join('')}`
  const end = `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${text.length}\n%%EOF\n`
  return new TextEncoder().encode(text + table + end)
}
